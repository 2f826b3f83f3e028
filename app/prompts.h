#pragma once

#include <QString>

class QWidget;

namespace jw {

/// Questions to the person. Tests answer them without a dialog.
class Prompts {
 public:
  enum class Unsaved { Save, Discard, Cancel };

  virtual ~Prompts();
  virtual Unsaved askUnsaved(QWidget* parent, const QString& name);
  /// Whether work that was kept aside before a crash shall be taken up again.
  virtual bool askRecover(QWidget* parent, const QString& name);
  /// Whether to save over a file that another program has changed.
  virtual bool askOverwriteChanged(QWidget* parent, const QString& name);
  virtual bool askRemove(QWidget* parent, const QString& what);
  /// Empty when cancelled, as the following.
  virtual QString askOpenFile(QWidget* parent, const QString& folder);
  virtual QString askTableFile(QWidget* parent, const QString& folder);
  virtual QString askLogFile(QWidget* parent, const QString& folder);
  virtual QString askSaveFile(QWidget* parent, const QString& proposal);
  virtual QString askFigureFile(QWidget* parent, const QString& proposal);
  virtual QString askFolder(QWidget* parent, const QString& folder);
  virtual QString askName(QWidget* parent, const QString& title, const QString& current);
};

}  // namespace jw
