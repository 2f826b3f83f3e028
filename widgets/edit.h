#pragma once

#include <functional>

#include <QString>
#include <tl/expected.hpp>

#include "core/model/project.h"
#include "core/quantity/quantity.h"

namespace jw {

/// One change to the project that a person asked for. `apply` changes a copy; on an error nothing
/// is changed. Edits with the same non-empty `gesture` that follow each other are one undo step
/// (a slider, a wheel, arrow keys on one field).
struct Edit {
  QString description;  ///< for Undo/Redo: "Change rotor inertia"
  QString gesture;
  std::function<tl::expected<void, InputError>(Project&)> apply;
};

}  // namespace jw
