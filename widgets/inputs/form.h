#pragma once

#include <vector>

#include <QWidget>

#include "widgets/inputs/field_group.h"
#include "widgets/inputs/field_row.h"

namespace jw {

/// One row for each field of a struct, in the catalogue's order. Showing another project of the
/// same kind changes rows in place.
class Form : public QWidget {
  Q_OBJECT

 public:
  explicit Form(const FieldGroup& group, QWidget* parent = nullptr);

  const QString& path() const { return path_; }
  void showFields(const FieldGroup& group);
  const std::vector<FieldRow*>& rows() const { return rows_; }
  FieldRow* row(const QString& path) const;
  bool hasWrongEntry() const;
  void discardEntries();

 signals:
  void editRequested(const jw::Edit& edit);
  void wrongChanged();

 private:
  QString path_;
  std::vector<FieldRow*> rows_;
};

}  // namespace jw
