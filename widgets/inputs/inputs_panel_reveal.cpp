// Finding parts of the panel by path, and remembering which are unfolded.
#include <algorithm>

#include <QCoreApplication>
#include <QEvent>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "widgets/inputs/inputs_panel.h"

namespace jw {
namespace {

constexpr auto kUnfolded = "unfolded";
constexpr int kRoom = 24;  // px kept free above and below what is scrolled to

/// The nearest Section or Card about `widget`, or `widget` itself.
template <class T>
T* enclosing(QWidget* widget) {
  while (widget != nullptr && qobject_cast<T*>(widget) == nullptr) widget = widget->parentWidget();
  return qobject_cast<T*>(widget);
}

}  // namespace

FieldRow* InputsPanel::findRow(const QString& path) const {
  for (const Form* form : forms()) {
    if (FieldRow* row = form->row(path)) return row;
  }
  return nullptr;
}

Section* InputsPanel::findSection(const QString& name) const {
  const auto found = std::find_if(sections_.begin(), sections_.end(),
                                  [&](const Section* s) { return s->name() == name; });
  return found == sections_.end() ? nullptr : *found;
}

void InputsPanel::reveal(const QString& path) {
  if (path.isEmpty()) return;
  FieldRow* row = findRow(path);
  if (row != nullptr && !row->isHidden()) return showPart(row, row->editor().widget());
  if (Section* section = findSection(path)) return showPart(section, &section->header());
  const auto all = forms();
  const auto form = std::find_if(all.begin(), all.end(), [&](const Form* f) {
    return f->path() == path || (row != nullptr && f == enclosing<Form>(row));
  });
  if (form == all.end()) return;
  Card* card = enclosing<Card>(*form);
  if (card != nullptr) return showPart(card, &card->header());
  showPart(*form, (*form)->rows().front()->editor().widget());
}

void InputsPanel::showPart(QWidget* part, QWidget* focus) {
  if (auto* card = enclosing<Card>(part)) card->setExpanded(true);
  if (auto* section = enclosing<Section>(part)) section->setExpanded(true);
  if (auto* row = qobject_cast<FieldRow*>(part)) enclosing<Form>(row)->unfold(*row);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
  scroll_->ensureWidgetVisible(part, 0, kRoom);
  // A part that is taller than the view is shown from its top.
  if (part->height() > scroll_->viewport()->height()) scroll_->ensureWidgetVisible(focus, 0, kRoom);
  focus->setFocus(Qt::OtherFocusReason);
}

QByteArray InputsPanel::saveState() const {
  QJsonArray names;
  for (const Section* section : sections_) {
    if (section->isExpanded()) names.append(section->name());
  }
  return QJsonDocument(QJsonObject{{kUnfolded, names}}).toJson(QJsonDocument::Compact);
}

bool InputsPanel::restoreState(const QByteArray& state) {
  const QJsonValue names = QJsonDocument::fromJson(state).object().value(kUnfolded);
  if (!names.isArray()) return false;
  for (Section* section : sections_) {
    section->setExpanded(names.toArray().contains(section->name()));
  }
  return true;
}

}  // namespace jw
