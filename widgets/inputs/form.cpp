#include "widgets/inputs/form.h"

#include <algorithm>

#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

/// Neighbouring fields under the same heading, one after the other.
std::vector<std::span<const FieldRef>> underHeadings(std::span<const FieldRef> fields) {
  std::vector<std::span<const FieldRef>> parts;
  for (auto first = fields.begin(); first != fields.end();) {
    const auto last = std::find_if(first, fields.end(), [&](const FieldRef& f) {
      return f.info->group != first->info->group;
    });
    parts.emplace_back(first, last);
    first = last;
  }
  return parts;
}

}  // namespace

Form::Form(const FieldGroup& group, QWidget* parent) : QWidget(parent), path_(group.path) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  for (const auto& fields : underHeadings(group.fields)) {
    auto* part = new FormPart(fields, this);
    column->addWidget(part);
    parts_.push_back(part);
    connect(part, &FormPart::rowMade, this, [this](FieldRow* row) {
      connect(&row->editor().link(), &FieldLink::editRequested, this, &Form::editRequested);
      connect(row, &FieldRow::wrongChanged, this, [this] {
        updateMarks();
        emit wrongChanged();
      });
    });
  }
  showFields(group);
}

void Form::showFields(const FieldGroup& group) {
  const auto fields = underHeadings(group.fields);
  Q_ASSERT(fields.size() == parts_.size());
  for (std::size_t k = 0; k < parts_.size(); ++k) parts_[k]->showFields(fields[k]);
  std::vector<FieldRow*> rows;
  for (const FormPart* part : parts_) {
    const auto made = part->madeRows();
    rows.insert(rows.end(), made.begin(), made.end());
  }
  if (rows == rows_) return;
  rows_ = std::move(rows);
  setNeeded(needed_);
  emit rowsChanged();
}

FieldRow* Form::row(const QString& path) const {
  const auto found = std::find_if(rows_.begin(), rows_.end(), [&](FieldRow* row) {
    return row->editor().link().path() == path;
  });
  return found == rows_.end() ? nullptr : *found;
}

void Form::unfold(const FieldRow& row) {
  for (FormPart* part : parts_) {
    if (part->contains(row)) part->setExpanded(true);
  }
}

void Form::setNeeded(const QStringList& paths) {
  needed_ = paths;
  for (FieldRow* row : rows_) {
    row->editor().setNeeded(paths.contains(row->editor().link().path()));
  }
  updateMarks();
}

void Form::updateMarks() {
  for (FormPart* part : parts_) part->updateMarks(needed_);
}

bool Form::hasWrongEntry() const {
  return std::any_of(rows_.begin(), rows_.end(),
                     [](const FieldRow* row) { return row->isWrong(); });
}

void Form::discardEntries() {
  for (FieldRow* row : rows_) row->discardEntry();
}

}  // namespace jw
