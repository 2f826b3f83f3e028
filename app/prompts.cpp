#include "app/prompts.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>

#include "widgets/panels/log_text.h"

namespace jw {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Prompts", text); }

QString projectFilter() { return tr("Projects (*.jointwright);;All files (*)"); }

/// The index of the answer that was chosen, -1 for none; the first is the usual one, the last
/// cancels.
int ask(QWidget* parent, const QString& question, const QString& detail,
        const QStringList& answers) {
  QMessageBox box(QMessageBox::NoIcon, "Jointwright", question, QMessageBox::NoButton, parent);
  box.setInformativeText(detail);
  QList<QPushButton*> buttons;
  for (const QString& answer : answers) {
    const bool last = buttons.size() + 1 == answers.size();
    const auto role = buttons.isEmpty() ? QMessageBox::AcceptRole
                      : last            ? QMessageBox::RejectRole
                                        : QMessageBox::DestructiveRole;
    buttons << box.addButton(answer, role);
  }
  box.setDefaultButton(buttons.first());
  box.setEscapeButton(buttons.last());
  box.exec();
  return static_cast<int>(buttons.indexOf(qobject_cast<QPushButton*>(box.clickedButton())));
}

bool confirm(QWidget* parent, const QString& question, const QString& detail, const QString& yes,
             const QString& no) {
  return ask(parent, question, detail, {yes, no}) == 0;
}

}  // namespace

Prompts::~Prompts() = default;

Prompts::Unsaved Prompts::askUnsaved(QWidget* parent, const QString& name) {
  switch (ask(parent, tr("Save the changes to %1?").arg(name), tr("Without saving they are lost."),
              {tr("&Save"), tr("&Do not save"), tr("Cancel")})) {
    case 0: return Unsaved::Save;
    case 1: return Unsaved::Discard;
    default: return Unsaved::Cancel;
  }
}

bool Prompts::askRecover(QWidget* parent, const QString& name) {
  return confirm(parent, tr("Recover unsaved work on %1?").arg(name),
                 tr("The program ended before these changes were saved."), tr("Take up"),
                 tr("Throw away"));
}

bool Prompts::askOverwriteChanged(QWidget* parent, const QString& name) {
  return confirm(parent, tr("%1 was changed by another program. Save over it?").arg(name),
                 tr("Saving replaces what the other program wrote."), tr("Save over it"),
                 tr("Cancel"));
}

bool Prompts::askRemove(QWidget* parent, const QString& what) {
  return confirm(parent, tr("Remove %1?").arg(what), tr("Undo brings it back."), tr("Remove"),
                 tr("Cancel"));
}

QString Prompts::askOpenFile(QWidget* parent, const QString& folder) {
  return QFileDialog::getOpenFileName(parent, tr("Open a project"), folder, projectFilter());
}

QString Prompts::askTableFile(QWidget* parent, const QString& folder) {
  return QFileDialog::getOpenFileName(parent, tr("Import motion points"), folder,
                                      tr("Tables (*.csv *.tsv *.txt);;All files (*)"));
}

QString Prompts::askLogFile(QWidget* parent, const QString& folder) {
  return QFileDialog::getOpenFileName(parent, tr("Open a measured log"), folder, tr(kLogFilter));
}

QString Prompts::askSaveFile(QWidget* parent, const QString& proposal) {
  QFileDialog dialog(parent, tr("Save the project"), proposal, projectFilter());
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix("jointwright");
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
  return dialog.selectedFiles().first();
}

QString Prompts::askFigureFile(QWidget* parent, const QString& proposal) {
  return QFileDialog::getSaveFileName(
      parent, tr("Export the figure"), proposal,
      tr("PNG picture (*.png);;SVG drawing (*.svg);;PDF page (*.pdf)"));
}

QString Prompts::askFolder(QWidget* parent, const QString& folder) {
  return QFileDialog::getExistingDirectory(parent, tr("Export the review to a folder"), folder);
}

QString Prompts::askName(QWidget* parent, const QString& title, const QString& current) {
  bool accepted = false;
  const QString name =
      QInputDialog::getText(parent, title, tr("Name:"), QLineEdit::Normal, current, &accepted);
  return accepted ? name.trimmed() : QString();
}

}  // namespace jw
