#pragma once

#include <span>
#include <vector>

#include <QWidget>

#include "widgets/inputs/field_row.h"

class QVBoxLayout;

namespace jw {

class FoldHeader;

/// Fields of a form under one heading that folds them and says how many are given; without a
/// heading if the catalogue has none. Starts folded. Hidden where none of its fields matters.
class FormPart : public QWidget {
  Q_OBJECT

 public:
  /// `fields` share one FieldInfo::group.
  FormPart(std::span<const FieldRef> fields, QWidget* parent = nullptr);

  /// Shows the fields, making rows for those that matter for the first time.
  void showFields(std::span<const FieldRef> fields);
  std::vector<FieldRow*> madeRows() const;
  bool contains(const FieldRow& row) const;
  void setExpanded(bool expanded);
  FoldHeader* header() const { return header_; }
  /// Marks the heading, and says how many of its fields a check waits for; unfolds for them unless
  /// the person has folded it.
  void updateMarks(const QStringList& needed);

 signals:
  void rowMade(jw::FieldRow* row);

 private:
  void makeRow(std::size_t index, const FieldRef& field);
  void updateRemark();

  FoldHeader* header_ = nullptr;
  QWidget* body_;
  QVBoxLayout* column_;
  int given_ = 0;
  int waiting_ = 0;
  bool turned_ = false;          ///< by the person
  std::vector<FieldRow*> rows_;  ///< one for each field; null until it matters
};

}  // namespace jw
