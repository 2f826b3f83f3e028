#include "widgets/inputs/form.h"

#include <algorithm>

#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"

namespace jw {

Form::Form(const FieldGroup& group, QWidget* parent) : QWidget(parent), path_(group.path) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  for (const FieldRef& field : group.fields) {
    auto* row = new FieldRow(*field.info, toQString(field.path), this);
    connect(&row->editor().link(), &FieldLink::editRequested, this, &Form::editRequested);
    connect(row, &FieldRow::wrongChanged, this, &Form::wrongChanged);
    column->addWidget(row);
    rows_.push_back(row);
  }
  showFields(group);
}

void Form::showFields(const FieldGroup& group) {
  Q_ASSERT(group.fields.size() == rows_.size());
  for (std::size_t k = 0; k < rows_.size(); ++k) rows_[k]->showField(group.fields[k]);
}

FieldRow* Form::row(const QString& path) const {
  const auto found = std::find_if(rows_.begin(), rows_.end(), [&](FieldRow* row) {
    return row->editor().link().path() == path;
  });
  return found == rows_.end() ? nullptr : *found;
}

bool Form::hasWrongEntry() const {
  return std::any_of(rows_.begin(), rows_.end(),
                     [](const FieldRow* row) { return row->isWrong(); });
}

void Form::discardEntries() {
  for (FieldRow* row : rows_) row->editor().discardEntry();
}

}  // namespace jw
