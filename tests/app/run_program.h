#pragma once

#include <QCoreApplication>
#include <QProcess>
#include <QString>
#include <QStringList>

namespace jw {

struct Outcome {
  int code;
  QString out;
  QString err;
};

/// Runs with no display and no platform named: the program has to see to that itself.
inline Outcome run(const QStringList& arguments) {
  QProcess process;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    environment.remove(name);
  process.setProcessEnvironment(environment);
  process.start(QCoreApplication::applicationDirPath() + "/jointwright", arguments);
  if (!process.waitForFinished(60'000) || process.exitStatus() != QProcess::NormalExit) {
    return {-1, {}, "did not run: " + process.errorString()};
  }
  return {process.exitCode(), QString::fromUtf8(process.readAllStandardOutput()),
          QString::fromUtf8(process.readAllStandardError())};
}

inline QString sample(const char* name) { return QString(JW_SAMPLES_DIR) + "/" + name; }
inline QString holdingSample() { return sample("1-orchard-shoulder.jointwright"); }
inline QString shortSample() { return sample("5-too-small.jointwright"); }

}  // namespace jw
