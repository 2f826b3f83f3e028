#pragma once

#include <functional>
#include <vector>

#include <QObject>

#include "app/autosave.h"
#include "app/document.h"
#include "app/prompts.h"

namespace jw {

/// Opening, saving and closing: the questions that belong to them, recent files, kept work.
class Session : public QObject {
  Q_OBJECT

 public:
  Session(Document& document, Prompts& prompts, QWidget* window);

  /// Each returns whether it was done; false when the person cancelled or a file is bad. What is
  /// open then stays as it is.
  bool newProject();
  bool chooseAndOpen();
  bool open(const QString& fileName);
  /// Opens a copy without a file name, so that saving cannot change the sample.
  bool openSample(const QString& fileName);
  bool save();
  bool saveAs();
  /// Asks what to do with unsaved changes; true if the project may be let go.
  bool mayLetGo();
  /// Takes up unnamed work of a run that broke off.
  bool offerUnnamedWork();
  /// Ends in order: nothing kept aside is left.
  void close() { autosave_.remove(); }

  Autosave& autosave() { return autosave_; }

 signals:
  void failed(const jw::InputError& error);
  void remarks(const std::vector<jw::InputError>& notes);  ///< empty: forget earlier messages
  void done(const QString& message);
  void aboutToReplace();  ///< another project is about to be shown

 private:
  bool saveTo(const QString& fileName);
  void replace(const std::function<void()>& change);
  bool refuse(const InputError& error);

  Document& document_;
  Prompts& prompts_;
  QWidget* window_;
  Autosave autosave_;
};

}  // namespace jw
