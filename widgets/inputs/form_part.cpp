#include "widgets/inputs/form_part.h"

#include <algorithm>

#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/fold_header.h"

namespace jw {
namespace {

bool matters(const FieldRef& field) {
  return field.info->applies == nullptr || field.info->applies(field.owner);
}

/// Whether the field says something other than it does in a new struct.
bool isGiven(const FieldRef& field) {
  if (field.info->kind == FieldKind::Text) return !field.info->text(field.owner).empty();
  return isSet(field.number()) && field.number() != field.info->defaultValue;
}

}  // namespace

FormPart::FormPart(std::span<const FieldRef> fields, QWidget* parent)
    : QWidget(parent), body_(new QWidget(this)), column_(nullptr), rows_(fields.size(), nullptr) {
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  whole->setSpacing(2);
  const QString heading = toQString(fields.front().info->group);
  if (!heading.isEmpty()) {
    header_ = new FoldHeader(heading, FoldHeader::Remark::Beside, this);
    header_->setQuiet(true);
    header_->setObjectName(toQString(fields.front().path) + ".heading");
    whole->addWidget(header_);
    body_->setVisible(false);
    connect(header_, &QAbstractButton::toggled, body_, &QWidget::setVisible);
    connect(header_, &QAbstractButton::clicked, this, [this] { turned_ = true; });
  }
  whole->addWidget(body_);
  column_ = new QVBoxLayout(body_);
  column_->setContentsMargins(0, 0, 0, heading.isEmpty() ? 0 : 4);
  column_->setSpacing(2);
}

void FormPart::makeRow(std::size_t index, const FieldRef& field) {
  auto* row = new FieldRow(*field.info, toQString(field.path), body_);
  const auto before = rows_.begin() + static_cast<std::ptrdiff_t>(index);
  const auto place = std::count_if(rows_.begin(), before, [](FieldRow* r) { return r != nullptr; });
  column_->insertWidget(static_cast<int>(place), row);
  rows_[index] = row;
  emit rowMade(row);
}

void FormPart::showFields(std::span<const FieldRef> fields) {
  bool any = false;
  for (std::size_t k = 0; k < rows_.size(); ++k) {
    const bool here = matters(fields[k]);
    any = any || here;
    if (here && rows_[k] == nullptr) makeRow(k, fields[k]);
    if (rows_[k] != nullptr) rows_[k]->showField(fields[k]);
  }
  given_ = static_cast<int>(std::count_if(fields.begin(), fields.end(), [](const FieldRef& field) {
    return matters(field) && isGiven(field);
  }));
  updateRemark();
  if (any == isHidden()) setVisible(any);
}

void FormPart::updateRemark() {
  if (header_ == nullptr) return;
  header_->setRemark(waiting_ > 0 ? tr("%1 needed").arg(waiting_)
                     : given_ > 0 ? tr("%1 given").arg(given_)
                                  : QString());
}

std::vector<FieldRow*> FormPart::madeRows() const {
  std::vector<FieldRow*> made;
  std::copy_if(rows_.begin(), rows_.end(), std::back_inserter(made),
               [](FieldRow* row) { return row != nullptr; });
  return made;
}

bool FormPart::contains(const FieldRow& row) const {
  return std::find(rows_.begin(), rows_.end(), &row) != rows_.end();
}

void FormPart::setExpanded(bool expanded) {
  if (header_ != nullptr) header_->setChecked(expanded);
}

void FormPart::updateMarks(const QStringList& needed) {
  if (header_ == nullptr) return;
  waiting_ = 0;
  bool wrong = false;
  for (FieldRow* row : madeRows()) {
    wrong = wrong || row->isWrong();
    if (!row->isHidden() && needed.contains(row->editor().link().path())) ++waiting_;
  }
  if (waiting_ > 0 && !turned_) header_->setChecked(true);
  header_->setWrong(wrong);
  updateRemark();
}

}  // namespace jw
