#include "widgets/inputs/field_editor.h"

#include <utility>

#include "core/model/band.h"
#include "widgets/inputs/choice_field.h"
#include "widgets/inputs/field_text.h"
#include "widgets/inputs/flag_field.h"
#include "widgets/inputs/note_field.h"
#include "widgets/inputs/number_field.h"
#include "widgets/inputs/text_field.h"

namespace jw {
namespace {

bool isNote(const FieldInfo& info) { return info.key == "note"; }

FieldEditor* plainEditor(const FieldInfo& info, const QString& path, QWidget* parent) {
  switch (info.kind) {
    case FieldKind::Number:
    case FieldKind::Integer: return new NumberField(info, path, parent);
    case FieldKind::Choice: return new ChoiceField(info, path, parent);
    case FieldKind::Flag: return new FlagField(info, path, parent);
    case FieldKind::Text: break;
  }
  if (isNote(info)) return new NoteField(info, path, parent);
  return new TextField(info, path, parent);
}

tl::expected<void, InputError> setUntyped(Project& project, const std::string& path, double value) {
  const auto field = findField(project, path);
  if (!field) return tl::unexpected(field.error());
  assignNumber(*field, value);
  return {};
}

}  // namespace

FieldLink::FieldLink(const FieldInfo& info, QString path) : info_(info), path_(std::move(path)) {}

void FieldLink::beginGesture() { ++gesture_; }

void FieldLink::send(const QString& text) {
  emit editRequested(edit([path = path_.toStdString(), value = text.toStdString()](Project& p) {
    return setField(p, path, value);
  }));
}

void FieldLink::sendBand(const QString& text) {
  Edit change = edit([path = path_.toStdString(), band = text.toStdString()](Project& p) {
    return setBand(p, path, band);
  });
  change.description = "Change the band of " + lowerFirst(toQString(info_.label));
  change.gesture += QStringLiteral("#band");
  emit editRequested(change);
}

void FieldLink::sendUntyped(double value) {
  emit editRequested(
      edit([path = path_.toStdString(), value](Project& p) { return setUntyped(p, path, value); }));
}

Edit FieldLink::edit(std::function<tl::expected<void, InputError>(Project&)> apply) const {
  return {"Change " + lowerFirst(toQString(info_.label)), path_ + '#' + QString::number(gesture_),
          std::move(apply)};
}

bool isWide(const FieldInfo& info) {
  return info.kind == FieldKind::Text && (info.key == "title" || isNote(info));
}

FieldEditor* makeEditor(const FieldInfo& info, const QString& path, QWidget* parent) {
  FieldEditor* editor = plainEditor(info, path, parent);
  QWidget* widget = editor->widget();
  widget->setObjectName(path);
  widget->setAccessibleName(spokenName(info));
  widget->setAccessibleDescription(toQString(info.help));
  widget->setToolTip(fieldToolTip(info));
  return editor;
}

}  // namespace jw
