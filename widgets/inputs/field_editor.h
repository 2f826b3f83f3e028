#pragma once

#include <QObject>
#include <QString>
#include <QWidget>

#include "core/model/field_catalogue.h"
#include "widgets/edit.h"

namespace jw {

/// Turns what a person does to one field into edits. Edits between two calls of beginGesture()
/// belong together and are one undo step.
class FieldLink : public QObject {
  Q_OBJECT

 public:
  FieldLink(const FieldInfo& info, QString path);
  const FieldInfo& info() const { return info_; }
  const QString& path() const { return path_; }

  void beginGesture();

  /// Asks for the field to be set to `text`.
  void send(const QString& text);

  /// Asks for the number's tolerance band to be `text`; empty takes it away.
  void sendBand(const QString& text);

  /// Asks for a number to be as it was before anything was typed: the value [internal unit] with
  /// no text kept for it.
  void sendUntyped(double value);

 signals:
  void editRequested(const jw::Edit& edit);

  /// The entry became wrong or right. `settled`: the person is done with it, so say so at once.
  void entryChanged(bool settled);

  /// The person wants to say how far the number may be off.
  void bandRequested();

 private:
  Edit edit(std::function<tl::expected<void, InputError>(Project&)> apply) const;

  const FieldInfo& info_;
  QString path_;
  int gesture_ = 0;
};

/// The editor of one field. It shows the model's value, sends edits through its link and keeps an
/// entry that cannot be read until it is put right, discarded, or the model's value changes.
class FieldEditor {
 public:
  FieldEditor(const FieldInfo& info, const QString& path) : link_(info, path) {}
  virtual ~FieldEditor() = default;
  FieldEditor(const FieldEditor&) = delete;
  FieldEditor& operator=(const FieldEditor&) = delete;

  FieldLink& link() { return link_; }
  const FieldInfo& info() const { return link_.info(); }
  virtual QWidget* widget() = 0;

  /// Shows the field of the project in force; leaves cursor and selection alone when it is the
  /// echo of what is being typed.
  virtual void showField(const FieldRef& field) = 0;

  /// What is wrong with the entry and what would be right; empty when it is right.
  virtual QString wrongEntry() const { return {}; }

  /// Gives up a wrong entry and shows the model's value again.
  virtual void discardEntry() {}

  /// Whether a check waits for this value.
  virtual void setNeeded(bool) {}

 protected:
  FieldLink link_;
};

/// Whether the field holds so much text that it gets the panel's whole width.
bool isWide(const FieldInfo& info);

/// The editor for this kind of field, with object name, accessible name and tool tip set.
FieldEditor* makeEditor(const FieldInfo& info, const QString& path, QWidget* parent);

}  // namespace jw
