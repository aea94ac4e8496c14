// The window's own small parts, on top of what Dear ImGui gives: panels without title bars, words in a given letter,
// pill buttons, verdict marks, typed fields and choices.
#pragma once

#include <optional>
#include <string>

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"
#include "editor/session/field_rows.hpp"
#include "geom/sheet/symbol.hpp"

namespace yardwright::panels {

/// A panel in a rectangle, on the ground that the frame begins with; end it with ImGui::End().
void begin_panel(const char* name, const canvas::Rect& place, bool scrolls = false);

/// Where they wrap, `right_margin` before the panel's edge.
void words(const std::string& text, ImFont* font, Colour colour, bool wraps = false, float right_margin = 0);
/// In small letters; they wrap.
void small_words(const Workspace& work, const std::string& text, Colour colour = palette::quiet_ink);
/// Words at a place, not in the flow; gives their width.
float words_at(ImDrawList& list, ImVec2 at, const std::string& text, ImFont* font, Colour colour);
float width_of(const std::string& text, ImFont* font);

/// The words cut to a width with "…" at their end; all of them where they fit.
std::string cut_to(const std::string& text, ImFont* font, float width);

/// A small rounded button with words; `strong` is filled.
bool pill(const std::string& text, const look::Look& look, bool strong = false);
/// The same line if it still fits, else the next.
void same_line_if_room(float width, const look::Look& look);
/// On the line of what stands before it, at the panel's right edge.
bool pill_at_right(const std::string& text, const look::Look& look);
float pill_width(const std::string& text, const look::Look& look);

/// Marks in millimetres drawn around a place, `factor` times as large.
void symbol(ImDrawList& list, ImVec2 at, const SymbolMarks& marks, double factor, const look::Look& look);

/// A typed field that shows `shown` until it is typed in; gives the text once it is entered or left.
std::optional<std::string> typed_field(Typing& typing, const char* id, const std::string& shown, float width);
/// One of several choices; gives the value when another is chosen.
std::optional<std::string> choice_field(const char* id, const std::vector<session::Choice>& choices,
                                        const std::string& now, float width);

/// In a menu or an open list.
void close_on_escape();

/// Explains what the pointer rests on.
void hint(const std::string& text);

}  // namespace yardwright::panels
