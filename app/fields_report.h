#pragma once

#include <string>

namespace jw {

/// Every parameter of a project: its path with [N] for a stage or a move, unit, allowed values and
/// help, as aligned text for people.
std::string fieldsTable();

/// The same for programs: {"format": "jointwright fields", "version": 1, "fields": [...]}.
std::string fieldsJson();

/// The same as a page of help, by station [HTML].
std::string fieldsHtml();

}  // namespace jw
