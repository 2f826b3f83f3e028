// Reading a log's text from its file.
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <fmt/format.h>

#include "widgets/panels/log_text.h"

namespace jw {
namespace {

constexpr qint64 kPiece = 4 << 20;  // [bytes] read at once

InputError fileError(const QString& what, const QString& fileName, const char* remedy) {
  return {what.toStdString(), QDir::toNativeSeparators(fileName).toStdString(), remedy};
}

std::optional<InputError> unfit(const QFileInfo& info, const QString& fileName) {
  if (!info.exists()) return fileError("there is no such file", fileName, "check the name");
  if (!info.isFile()) return fileError("this is no file", fileName, "name a file with a log");
  if (info.size() > qint64(kLargestLog))
    return fileError(QString::fromStdString(fmt::format(
                         "the file claims {:.1f} GB, more than the {:.1f} GB that can be read",
                         double(info.size()) / 1e9, double(kLargestLog) / 1e9)),
                     fileName, "cut out the stretch that matters; nothing was read");
  return std::nullopt;
}

}  // namespace

bool isLogFile(const QString& fileName) {
  static const QStringList kEndings{"csv", "tsv", "txt", "log"};
  return kEndings.contains(QFileInfo(fileName).suffix().toLower());
}

tl::expected<LogText, InputError> readLogText(const QString& fileName, const LogAdvance& progress) {
  const QFileInfo info(fileName);
  if (auto error = unfit(info, fileName)) return tl::unexpected(*error);
  QFile file(fileName);
  if (!file.open(QIODevice::ReadOnly))
    return tl::unexpected(
        fileError("cannot be read: " + file.errorString(), fileName, "check that you may read it"));
  LogText text{fileName, info.fileName().toStdString(), {}, std::uint64_t(info.size()), true};
  text.bytes.resize(std::size_t(info.size()));
  qint64 got = 0;
  while (got < info.size()) {
    const qint64 count = file.read(text.bytes.data() + got, std::min(kPiece, info.size() - got));
    if (count < 0)
      return tl::unexpected(fileError("cannot be read to its end: " + file.errorString(), fileName,
                                      "copy it again, whole"));
    if (count == 0) break;  // cut short; sourceError tells
    got += count;
    if (!progress(double(got) / double(info.size())))
      return tl::unexpected(fileError("the reading was stopped", fileName, "open it again"));
  }
  text.bytes.resize(std::size_t(got));
  return text;
}

}  // namespace jw
