#pragma once

#include <QLabel>
#include <QLineEdit>

#include "core/studies/study_ranges.h"

namespace jw {

/// From where to where a study goes: two small fields with units. Left empty they take the usual
/// range; an entry that cannot be used is marked, and the range stays as it was.
class RangeFields : public QWidget {
  Q_OBJECT

 public:
  /// Object names are `name`.from and `name`.to.
  explicit RangeFields(const QString& name, QWidget* parent = nullptr);

  /// Shows `range` of the quantity `info`.
  void showRange(const FieldInfo& info, const StudyRange& range);
  const StudyRange& range() const { return m_range; }

 signals:
  /// A new range was typed; unset where a field was emptied.
  void rangeTyped(const jw::StudyRange& range);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void take(QLineEdit* field);
  void showText(QLineEdit* field, double value);
  void setWrong(QLineEdit* field, const QString& message);

  const FieldInfo* m_info = nullptr;
  StudyRange m_range;
  QLineEdit* m_from;
  QLineEdit* m_to;
};

}  // namespace jw
