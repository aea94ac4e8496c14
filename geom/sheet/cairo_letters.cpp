#include <cairo-ft.h>
#include <cairo.h>
#include <fontconfig/fontconfig.h>

#include <algorithm>

#include "geom/sheet/cairo_marks.hpp"

namespace yardwright::cairo {

namespace {

/// Latin, punctuation, arrows and signs that Inter has for certain.
bool plain(const std::string& text) {
  return std::ranges::all_of(text, [](unsigned char c) { return c < 0xE0 || c == 0xE2; });
}

/// The bytes of one UTF-8 letter at `at`, or 0 where they are none.
std::size_t letter_bytes(const std::string& text, std::size_t at) {
  FcChar32 code = 0;
  const int used =
      FcUtf8ToUcs4(reinterpret_cast<const FcChar8*>(text.data() + at), &code, static_cast<int>(text.size() - at));
  return used > 0 && code < 0x110000 && (code < 0xD800 || code > 0xDFFF) ? static_cast<std::size_t>(used) : 0;
}

FcCharSet* letters_of(const std::string& text) {
  FcCharSet* set = FcCharSetCreate();
  for (std::size_t at = 0; at < text.size();) {
    FcChar32 code = 0;
    const int used =
        FcUtf8ToUcs4(reinterpret_cast<const FcChar8*>(text.data() + at), &code, static_cast<int>(text.size() - at));
    if (used <= 0) break;
    FcCharSetAddChar(set, code);
    at += static_cast<std::size_t>(used);
  }
  return set;
}

_cairo_font_face* open_face(const std::string& text, bool bold) {
  FcPattern* wanted = FcPatternCreate();
  FcPatternAddString(wanted, FC_FAMILY, reinterpret_cast<const FcChar8*>("Inter"));
  FcPatternAddString(wanted, FC_FAMILY, reinterpret_cast<const FcChar8*>("sans-serif"));
  FcPatternAddInteger(wanted, FC_WEIGHT, bold ? FC_WEIGHT_DEMIBOLD : FC_WEIGHT_REGULAR);
  FcPatternAddInteger(wanted, FC_SLANT, FC_SLANT_ROMAN);
  if (!plain(text)) {
    FcCharSet* set = letters_of(text);
    FcPatternAddCharSet(wanted, FC_CHARSET, set);
    FcCharSetDestroy(set);
  }
  cairo_font_face_t* face = cairo_ft_font_face_create_for_pattern(wanted);
  FcPatternDestroy(wanted);
  return face;
}

}  // namespace

Letters::~Letters() {
  for (auto& [key, face] : faces_) cairo_font_face_destroy(face);
}

void Letters::select(_cairo* context, const std::string& text, double height_mm, bool bold) {
  const std::string key = (bold ? "bold" : "plain") + (plain(text) ? std::string{} : " " + text);
  auto found = faces_.find(key);
  if (found == faces_.end()) found = faces_.emplace(key, open_face(text, bold)).first;
  cairo_set_font_face(context, found->second);
  cairo_set_font_size(context, height_mm);
}

std::string printable(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t used = letter_bytes(text, at);
    const bool control = static_cast<unsigned char>(text[at]) < 0x20 || text[at] == 0x7F;
    out += used == 0 ? "?" : control ? " " : text.substr(at, used);
    at += std::max<std::size_t>(used, 1);
  }
  return out;
}

double text_width_mm(_cairo* context, Letters& letters, const std::string& text, double height_mm, bool bold) {
  const std::string shown = printable(text);
  letters.select(context, shown, height_mm, bold);
  cairo_text_extents_t extents;
  cairo_text_extents(context, shown.c_str(), &extents);
  return extents.x_advance;
}

}  // namespace yardwright::cairo
