#pragma once

#include <vector>

#include <QWidget>

#include "widgets/panels/log_fields.h"
#include "widgets/panels/log_study.h"

namespace jw {

/// How a log's text is read: what each column holds, guessed and correctable above its first rows;
/// how the rows are mended, and what was mended.
class LogColumnsPage : public QWidget {
  Q_OBJECT

 public:
  explicit LogColumnsPage(QWidget* parent = nullptr);

  /// Shows layout, columns and first rows of a text; empties the page if there is none.
  void showColumns(const LogStudy& study);
  /// Holds the text as the study has it now.
  void holdText(const LogStudy& study) { m_text = study.text; }
  /// Lists the mends of the rows that were read.
  void showMends(const MeasuredLog* log);
  /// What the person sees and may have changed.
  const LogColumns& columns() const { return m_columns; }
  LogReading reading() const;

 signals:
  void layoutChanged(const jw::LogLayout& layout);
  void columnsChanged();
  void readingChanged();
  void refused(const jw::InputError& error);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  QLayout* makeLayoutRow();
  QLayout* makeMending();
  LogChoice* addRule(QLayout* form, const QString& label, const QString& objectName,
                     const QStringList& items);
  void showLayout();
  void showHeads();
  void showRows();
  void showHead(int column);
  void markReasons();
  QWidget* roleChoice(int column);
  QWidget* unitChoice(int column);
  QWidget* signChoice(int column);
  QWidget* factorEntry(int column);
  void changeSigns();
  void changeLines();
  void take(tl::expected<LogLayout, InputError> layout);

  std::shared_ptr<const LogText> m_text;
  LogColumns m_columns;
  LogChoice* m_delimiter = nullptr;
  LogChoice* m_decimal = nullptr;
  LogSpin* m_titleLine = nullptr;
  LogSpin* m_firstRow = nullptr;
  QLabel* m_reasons = nullptr;
  QTableWidget* m_table = nullptr;
  LogChoice* m_duplicates = nullptr;
  LogChoice* m_empty = nullptr;
  LogChoice* m_wrap = nullptr;
  LogEntry* m_turn = nullptr;
  QTableWidget* m_mends = nullptr;
  bool m_showing = false;
};

/// What a column of the page's table tells, one row each, above the rows of the text.
enum class LogHead { Name, Role, Unit, Sign, Factor, Reason, Count };

/// "3, 17, 21 and 12 more".
QString linesText(const LogMend& mend);

}  // namespace jw
