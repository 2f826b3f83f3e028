#pragma once

#include <QString>

namespace jw {

/// Opens the window, with a project file if one is named, and runs until it is closed. Returns the
/// exit code. With JW_PROBE=first-frame in the environment the program prints the time from its
/// start to the first evaluated picture [ms] and ends.
int runWindow(const QString& file, int& argc, char** argv);

}  // namespace jw
