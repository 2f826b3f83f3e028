#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/quantity/quantity.h"

namespace jw {

/// Name and version at the head of a project document.
inline constexpr std::string_view kProjectFormat = "jointwright project";
inline constexpr int kProjectVersion = 1;

/// Most members that a document may list.
inline constexpr std::size_t kMostVariants = 1'000;
inline constexpr std::size_t kMostStages = 100;
inline constexpr std::size_t kMostSegments = 10'000;
inline constexpr std::size_t kMostCycles = 1'000;
inline constexpr std::size_t kMostMasses = 1000;

struct ReadProject {
  Project project;
  std::vector<InputError> notes;  ///< unknown keys that were kept, migrations
};

/// The project as one readable JSON document: format and version first, then the fields of the
/// catalogue in its order, 2-space indent, newline at the end. Same content -> same bytes. A number
/// is text as typed ("27 N*m") if that still reads as the same value, else in plain form; a plain
/// number stands bare. A choice is its key, a flag true or false. A number that is unset is left
/// out, or null where leaving it out would mean a default. The points of a segment's table are
/// lists of SI numbers under "time [s]", "angle [rad]", "speed [rad/s]" and "acceleration
/// [rad/s^2]". Unknown keys follow the known ones, sorted.
std::string writeProject(const Project& project);

/// Reads what writeProject writes; a bare number is in the field's display unit, a key that is left
/// out keeps its default. As with setField, the text of each number that is given is kept. Fails
/// with file, line and column (syntax) or file and path
/// ("variants[0].transmission[1].ratio"), what was found and what is allowed.
tl::expected<ReadProject, InputError> readProject(std::string_view text, std::string_view fileName);

}  // namespace jw
