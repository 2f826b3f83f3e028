#pragma once

#include <tl/expected.hpp>

#include "widgets/panels/log_study.h"

namespace jw {

/// Whether a file's name ends as those of logs do: csv, tsv, txt, log.
bool isLogFile(const QString& fileName);

/// What a file chooser offers.
inline constexpr const char* kLogFilter = "Logs (*.csv *.tsv *.txt *.log);;All files (*)";

/// The text of a log's file. Fails, naming the file, if it is missing, no file, unreadable or
/// larger than kLargestLog (nothing of it is then read), and when `progress` stops. A file that
/// ends sooner than its folder says is told by LogText::size.
tl::expected<LogText, InputError> readLogText(const QString& fileName, const LogAdvance& progress);

}  // namespace jw
