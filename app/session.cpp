#include "app/session.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QWidget>

#include "app/recent_files.h"

namespace jw {

Session::Session(Document& document, Prompts& prompts, QWidget* window)
    : QObject(window),
      document_(document),
      prompts_(prompts),
      window_(window),
      autosave_(document) {
  connect(&autosave_, &Autosave::failed, this, &Session::failed);
}

bool Session::refuse(const InputError& error) {
  emit failed(error);
  return false;
}

void Session::replace(const std::function<void()>& change) {
  emit aboutToReplace();
  autosave_.remove();
  change();
}

bool Session::newProject() {
  if (!mayLetGo()) return false;
  replace([&] { document_.startNew(Project{}); });
  emit remarks({});
  return true;
}

bool Session::chooseAndOpen() {
  const QString start = document_.fileName().isEmpty() ? QDir::homePath() : document_.fileName();
  const QString fileName = prompts_.askOpenFile(window_, QFileInfo(start).absolutePath());
  return !fileName.isEmpty() && open(fileName);
}

bool Session::open(const QString& fileName) {
  auto loaded = loadProjectFile(fileName);
  if (!loaded) {
    RecentFiles::remove(fileName);
    return refuse(loaded.error());
  }
  if (!mayLetGo()) return false;
  const auto kept = Autosave::find(fileName, loaded->project);
  const bool recover = kept && prompts_.askRecover(window_, QFileInfo(fileName).fileName());
  if (kept && !recover) QFile::remove(kept->autosaveFile);
  replace([&] {
    if (recover) {
      document_.recover(kept->project, QFileInfo(fileName).absoluteFilePath());
    } else {
      document_.show(*loaded, fileName);
    }
  });
  autosave_.writeNow();
  RecentFiles::add(fileName);
  emit remarks(loaded->notes);
  return true;
}

bool Session::openSample(const QString& fileName) {
  auto loaded = loadProjectFile(fileName);
  if (!loaded) return refuse(loaded.error());
  if (!mayLetGo()) return false;
  replace([&] { document_.startNew(std::move(loaded->project)); });
  emit remarks(loaded->notes);
  return true;
}

bool Session::save() {
  if (document_.fileName().isEmpty()) return saveAs();
  const QString name = QFileInfo(document_.fileName()).fileName();
  if (document_.fileChangedOutside() && !prompts_.askOverwriteChanged(window_, name)) return false;
  return saveTo(document_.fileName());
}

bool Session::saveAs() {
  QString proposal = document_.fileName();
  if (proposal.isEmpty()) {
    const QString title = QString::fromStdString(document_.project()->title).simplified();
    const QString name = title.isEmpty() ? tr("untitled") : QString(title).replace('/', '-');
    proposal = QDir::home().filePath(name + "." + kProjectSuffix);
  }
  const QString fileName = prompts_.askSaveFile(window_, proposal);
  return !fileName.isEmpty() && saveTo(fileName);
}

bool Session::saveTo(const QString& fileName) {
  const auto saved = document_.save(fileName);
  if (!saved) return refuse(saved.error());
  RecentFiles::add(fileName);
  emit done(tr("Saved %1").arg(QDir::toNativeSeparators(fileName)));
  return true;
}

bool Session::mayLetGo() {
  if (!document_.isModified()) return true;
  switch (prompts_.askUnsaved(window_, document_.displayName())) {
    case Prompts::Unsaved::Save: return save();
    case Prompts::Unsaved::Discard: autosave_.remove(); return true;
    case Prompts::Unsaved::Cancel: break;
  }
  return false;
}

bool Session::offerUnnamedWork() {
  for (const KeptWork& kept : Autosave::findUnnamed()) {
    const QString title = QString::fromStdString(kept.project.title);
    const bool take = prompts_.askRecover(window_, title.isEmpty() ? tr("Untitled") : title);
    if (take) {
      replace([&] { document_.recover(kept.project, {}); });
      autosave_.writeNow();
    }
    QFile::remove(kept.autosaveFile);
    if (take) return true;
  }
  return false;
}

}  // namespace jw
