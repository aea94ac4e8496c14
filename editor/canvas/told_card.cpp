#include "editor/canvas/told_card.hpp"

#include <algorithm>
#include <array>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::canvas {

namespace {

using look::packed;

struct CardPlace {
  const session::Session& session;
  const session::View& view;
  const look::Look& look;
};

float widest(const std::vector<std::string>& lines, ImFont* font) {
  float width = 0;
  for (const std::string& line : lines)
    width = std::max(width, font->CalcTextSizeA(font->FontSize, 1e6F, 0, line.c_str()).x);
  return width;
}

/// Kept on the canvas, clear of its foot.
ImVec2 on_canvas(const CardPlace& input, ImVec2 low, ImVec2 size) {
  const auto& look = input.look;
  const float left = static_cast<float>(input.view.top_left.x), top = static_cast<float>(input.view.top_left.y);
  const float right = left + static_cast<float>(input.view.width_px),
              bottom = top + static_cast<float>(input.view.height_px);
  return {std::clamp(low.x, left + look.px(8), std::max(left + look.px(8), right - size.x - look.px(8))),
          std::clamp(low.y, top + look.px(8), std::max(top + look.px(8), bottom - size.y - look.px(60)))};
}

/// How many things of the plan it would hide.
std::ptrdiff_t hidden_by(const CardPlace& input, ImVec2 low, ImVec2 size) {
  return std::ranges::count_if(input.session.site().items, [&](const Item& item) {
    if (!footprint(item.thing)) return false;
    const ImVec2 at = on_screen(input.view, place_of(item.thing));
    return at.x > low.x && at.y > low.y && at.x < low.x + size.x && at.y < low.y + size.y;
  });
}

/// Of the four corners around the place, the one where the card hides least.
ImVec2 card_corner(const CardPlace& input, ImVec2 place, ImVec2 size) {
  const float across = input.look.px(24), down = input.look.px(22);
  const std::array<ImVec2, 4> corners{{{place.x + across, place.y + down},
                                       {place.x - across - size.x, place.y + down},
                                       {place.x + across, place.y - down - size.y},
                                       {place.x - across - size.x, place.y - down - size.y}}};
  const auto kept = [&](ImVec2 low) { return on_canvas(input, low, size); };
  return kept(*std::ranges::min_element(corners, {}, [&](ImVec2 low) { return hidden_by(input, kept(low), size); }));
}

void draw_lines(const ToldCard& card, ImVec2 low, float line_height, const look::Look& look, ImDrawList& list) {
  for (std::size_t i = 0; i < card.lines.size(); ++i) {
    TextMark mark;
    mark.text = card.lines[i];
    mark.bold = i == 0;
    mark.colour = i == card.coloured ? card.colour : palette::ink;
    mark.halo = palette::none;
    draw_words(mark, {low.x + look.px(11), low.y + look.px(6) + line_height * (static_cast<float>(i) + 0.5F)},
               look.letters.small->FontSize, look, list);
  }
}

}  // namespace

void draw_told_card(const ToldCard& card, const session::Session& session, const session::View& view,
                    const look::Look& look, ImDrawList& list) {
  const float line_height = look.letters.small->FontSize * 1.35F;
  const ImVec2 size{widest(card.lines, look.letters.strong) * 0.88F + look.px(22),
                    line_height * static_cast<float>(card.lines.size()) + look.px(12)};
  const ImVec2 place = on_screen(view, card.about);
  const ImVec2 low = card_corner({session, view, look}, place, size);
  list.AddLine(place, {low.x < place.x ? low.x + size.x : low.x, low.y + size.y / 2}, packed(card.colour), look.px(1));
  list.AddRectFilled(low, {low.x + size.x, low.y + size.y}, packed(palette::white), look.px(8));
  list.AddRect(low, {low.x + size.x, low.y + size.y}, packed(card.colour), look.px(8), 0, look.px(1.2));
  draw_lines(card, low, line_height, look, list);
}

}  // namespace yardwright::canvas
