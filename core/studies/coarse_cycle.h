#pragma once

#include "core/model/project.h"

namespace jw {

/// The project with its cycles sampled at about `samples` instants and long motion tables thinned
/// to as many points: what an evaluation needs to follow a hand. Ends and instants of largest speed
/// and acceleration of a table are kept where the table gives them.
Project withCoarseCycle(const Project& project, int samples = 60);

}  // namespace jw
