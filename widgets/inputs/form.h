#pragma once

#include <vector>

#include <QWidget>

#include "widgets/inputs/field_group.h"
#include "widgets/inputs/field_row.h"
#include "widgets/inputs/form_part.h"

namespace jw {

/// The fields of a struct in the catalogue's order, under the catalogue's headings. Showing another
/// project of the same kind changes rows in place; a row is made when its field first matters.
class Form : public QWidget {
  Q_OBJECT

 public:
  explicit Form(const FieldGroup& group, QWidget* parent = nullptr);

  const QString& path() const { return path_; }
  void showFields(const FieldGroup& group);
  /// The rows that have been made.
  const std::vector<FieldRow*>& rows() const { return rows_; }
  FieldRow* row(const QString& path) const;
  /// Unfolds what `row` stands in.
  void unfold(const FieldRow& row);
  /// Marks the fields that a check waits for.
  void setNeeded(const QStringList& paths);
  bool hasWrongEntry() const;
  void discardEntries();

 signals:
  void editRequested(const jw::Edit& edit);
  void wrongChanged();
  void rowsChanged();  ///< rows have been made

 private:
  void updateMarks();

  QString path_;
  QStringList needed_;
  std::vector<FormPart*> parts_;
  std::vector<FieldRow*> rows_;
};

}  // namespace jw
