#pragma once

#include <string>

#include "core/model/project.h"
#include "core/studies/tolerance.h"

namespace jw {

/// The tolerance study for programs; `jointwright tolerance --help` documents the form.
std::string toleranceJson(const std::string& fileName, const Project& project,
                          const Tolerance& result);

/// The same in short, for people.
std::string toleranceText(const Tolerance& result);

}  // namespace jw
