// One row of a card: a label, the field beside it, and under it what was wrong with the last text that was typed.
#pragma once

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

/// A label with its explanation; what follows stands beside it.
void row_label(const Workspace& work, const std::string& label, const std::string& means);
float room_for_field();

/// The text once it is entered or chosen.
std::optional<std::string> field_row(const Workspace& work, const session::FieldRow& row);

/// Under the row whose last text was not taken: why.
void show_refusal(const Workspace& work, const std::string& key);

/// Keeps what was wrong with the text of a row to be shown under it; forgets it where nothing was.
void keep_refusal(const Workspace& work, const std::string& key, const Problem* problem);

}  // namespace yardwright::panels
