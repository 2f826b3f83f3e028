#pragma once

namespace jw {

/// Exit codes of the commands. For `check`: all hold or are close, or some are short.
enum ExitCode { kAllHold = 0, kSomeShort = 1, kBadInput = 2 };

/// The program: reads the command line and runs a command or opens the window. Messages about bad
/// input go to standard error. Returns the exit code.
int runProgram(int argc, char** argv);

}  // namespace jw
