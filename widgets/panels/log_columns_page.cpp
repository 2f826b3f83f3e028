#include "widgets/panels/log_columns_page.h"

#include <algorithm>

#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>

#include "core/files/log_titles.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr std::size_t kPreviewRows = 40;
constexpr int kHeads = int(LogHead::Count);
constexpr char kDelimiters[] = {',', ';', '\t', '|', ' '};
constexpr int kLastLine = 1'000;

}  // namespace

QString linesText(const LogMend& mend) {
  constexpr std::size_t kShown = 6;
  QStringList parts;
  for (std::size_t i = 0; i < std::min(kShown, mend.lines.size()); ++i)
    parts << QString::number(mend.lines[i]);
  QString text = parts.join(QStringLiteral(", "));
  if (mend.count > kShown && !mend.lines.empty())
    text += QStringLiteral(" and %1 more").arg(mend.count - kShown);
  return text;
}

LogColumnsPage::LogColumnsPage(QWidget* parent) : QWidget(parent) {
  m_table = new QTableWidget(kHeads, 0, this);
  m_table->setObjectName(QStringLiteral("log.columns"));
  m_table->setAccessibleName(tr("Columns and first rows"));
  m_table->horizontalHeader()->setMinimumSectionSize(150);
  m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  m_table->setSelectionMode(QAbstractItemView::NoSelection);
  m_table->setTabKeyNavigation(false);
  m_table->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  m_table->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  m_reasons = makeLogLabel({}, "muted", QStringLiteral("log.reasons"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(12, 12, 12, 12);
  column->setSpacing(8);
  column->addLayout(makeLayoutRow());
  column->addWidget(m_reasons);
  column->addWidget(m_table, 1);
  column->addLayout(makeMending());
}

QLayout* LogColumnsPage::makeLayoutRow() {
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  const auto add = [&](const QString& text, QWidget* field) {
    auto* label = new QLabel(text);
    label->setBuddy(field);
    row->addWidget(label);
    row->addWidget(field);
    row->addSpacing(12);
  };
  m_delimiter = new LogChoice(tr("Columns are parted by"), QStringLiteral("log.delimiter"));
  m_delimiter->addItems({tr("comma"), tr("semicolon"), tr("tab"), tr("upright bar"), tr("blanks")});
  m_decimal = new LogChoice(tr("Decimal sign"), QStringLiteral("log.decimal"));
  m_decimal->addItems({tr("point"), tr("comma")});
  m_titleLine =
      new LogSpin(tr("Line of the names"), QStringLiteral("log.titleLine"), 0, kLastLine, 0);
  m_titleLine->setSpecialValueText(tr("none"));
  m_firstRow =
      new LogSpin(tr("Line of the first row"), QStringLiteral("log.firstRow"), 1, kLastLine, 0);
  add(tr("Columns parted &by"), m_delimiter);
  add(tr("&Decimals with a"), m_decimal);
  add(tr("&Names in line"), m_titleLine);
  add(tr("&First row in line"), m_firstRow);
  row->addStretch(1);
  for (QComboBox* choice : {m_delimiter, m_decimal})
    connect(choice, &QComboBox::activated, this, &LogColumnsPage::changeSigns);
  for (LogSpin* spin : {m_titleLine, m_firstRow})
    connect(spin, &QDoubleSpinBox::valueChanged, this, &LogColumnsPage::changeLines);
  return row;
}

LogChoice* LogColumnsPage::addRule(QLayout* form, const QString& label, const QString& objectName,
                                   const QStringList& items) {
  auto* choice = new LogChoice(label, objectName);
  choice->addItems(items);
  static_cast<QFormLayout*>(form)->addRow(label, choice);
  connect(choice, &QComboBox::activated, this, &LogColumnsPage::readingChanged);
  return choice;
}

QLayout* LogColumnsPage::makeMending() {
  auto* form = new QFormLayout;
  form->setHorizontalSpacing(12);
  m_duplicates = addRule(
      form, tr("Rows of one time"), QStringLiteral("log.duplicates"),
      {tr("take their mean"), tr("keep the first"), tr("keep the last"), tr("refuse the log")});
  m_empty = addRule(form, tr("Rows with an empty cell"), QStringLiteral("log.emptyCells"),
                    {tr("leave out"), tr("refuse the log")});
  m_wrap =
      addRule(form, tr("A position that begins anew"), QStringLiteral("log.wrapAround"),
              {tr("goes on, if it looks wrapped"), tr("always goes on"), tr("stays as it is")});
  m_turn = new LogEntry(tr("after"), Quantity::Angle, "deg", 1e-3, kLargestLogPosition, this);
  m_turn->setObjectName(QStringLiteral("log.turn"));
  m_turn->setValue(LogReading{}.turn);
  form->addRow(tr("after"), m_turn);
  connect(m_turn, &LogEntry::valueChanged, this, &LogColumnsPage::readingChanged);
  m_mends = makeLogTable(tr("What was mended"), QStringLiteral("log.mends"),
                         {tr("What was mended or noticed"), tr("Lines")});
  m_mends->horizontalHeader()->setStretchLastSection(false);
  m_mends->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
  m_mends->setMinimumHeight(118);
  m_mends->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
  auto* row = new QHBoxLayout;
  row->setSpacing(24);
  row->addLayout(form);
  row->addWidget(m_mends, 1);
  return row;
}

LogReading LogColumnsPage::reading() const {
  LogReading reading;
  reading.duplicates = DuplicateTimes(m_duplicates->currentIndex());
  reading.emptyCells = EmptyCells(m_empty->currentIndex());
  reading.wrapAround = WrapAround(m_wrap->currentIndex());
  reading.turn = m_turn->value();
  return reading;
}

void LogColumnsPage::showColumns(const LogStudy& study) {
  m_text = study.text;
  m_columns = study.columns ? *study.columns : LogColumns{};
  m_showing = true;
  showLayout();
  showHeads();
  showRows();
  m_showing = false;
  if (!study.columns) showMends(nullptr);
}

void LogColumnsPage::showLayout() {
  const LogLayout& layout = m_columns.layout;
  const auto* at = std::find(std::begin(kDelimiters), std::end(kDelimiters), layout.delimiter);
  m_delimiter->setCurrentIndex(int(at - std::begin(kDelimiters)));
  m_decimal->setCurrentIndex(layout.decimalSign == ',' ? 1 : 0);
  m_titleLine->setValue(int(layout.titleLine));
  m_firstRow->setValue(int(layout.firstRowLine));
  QStringList reasons;
  for (const std::string& reason : layout.reasons) reasons << toQString(reason);
  m_reasons->setText(reasons.isEmpty() ? QString() : tr("Guessed: %1.").arg(reasons.join("; ")));
}

void LogColumnsPage::showHeads() {
  m_table->clear();
  m_table->setColumnCount(int(m_columns.columns.size()));
  m_table->setRowCount(m_columns.columns.empty() ? 0 : kHeads);
  QStringList numbers;
  for (int c = 0; c < m_table->columnCount(); ++c) numbers << tr("column %1").arg(c + 1);
  m_table->setHorizontalHeaderLabels(numbers);
  for (int c = 0; c < m_table->columnCount(); ++c) showHead(c);
  markReasons();
}

void LogColumnsPage::showHead(int column) {
  const LogColumn& c = m_columns.columns[std::size_t(column)];
  const auto put = [&](LogHead head, QWidget* field) {
    m_table->setCellWidget(int(head), column, field);
  };
  QTableWidgetItem* name = logCell(c.title.empty() ? tr("(no name)") : toQString(c.title));
  name->setFont(titleFont());
  m_table->setItem(int(LogHead::Name), column, name);
  put(LogHead::Role, roleChoice(column));
  put(LogHead::Unit, unitChoice(column));
  put(LogHead::Sign, signChoice(column));
  put(LogHead::Factor, factorEntry(column));
  m_table->setItem(int(LogHead::Reason), column, logCell({}));
}

void LogColumnsPage::markReasons() {
  for (int c = 0; c < m_table->columnCount(); ++c) {
    const LogColumn& column = m_columns.columns[std::size_t(c)];
    QTableWidgetItem* item = m_table->item(int(LogHead::Reason), c);
    const QString reason = toQString(column.reason);
    item->setText(column.doubtful ? tr("▲ Look here: %1").arg(reason) : reason);
    const Palette& p = jw::palette();
    item->setForeground(column.doubtful ? inkOf(p.close, p.panel) : p.muted);
    item->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  }
}

void LogColumnsPage::showRows() {
  QStringList heads{tr("name"), tr("holds"), tr("unit"), tr("sign"), tr("times"), tr("why")};
  if (!m_text || m_columns.columns.empty()) return;
  const auto rows = previewRows(m_text->source(), m_columns.layout, kPreviewRows);
  m_table->setRowCount(kHeads + int(rows.size()));
  for (std::size_t r = 0; r < rows.size(); ++r) {
    heads << tr("row %1").arg(r + 1);
    for (int c = 0; c < m_table->columnCount(); ++c) {
      const bool there = std::size_t(c) < rows[r].size();
      m_table->setItem(kHeads + int(r), c,
                       logCell(there ? toQString(rows[r][std::size_t(c)]) : QString(), true));
    }
  }
  m_table->setVerticalHeaderLabels(heads);
  m_table->horizontalHeader()->setSectionResizeMode(
      m_table->columnCount() <= 5 ? QHeaderView::Stretch : QHeaderView::ResizeToContents);
  m_table->resizeRowsToContents();
}

QWidget* LogColumnsPage::roleChoice(int column) {
  auto* choice = new LogChoice(tr("Column %1 holds").arg(column + 1),
                               QStringLiteral("log.role%1").arg(column));
  for (int role = 0; role <= int(LogRole::Current); ++role)
    choice->addItem(toQString(nameOf(LogRole(role))));
  choice->setCurrentIndex(int(m_columns.columns[std::size_t(column)].role));
  connect(choice, &QComboBox::activated, this, [this, column](int index) {
    LogColumn& c = m_columns.columns[std::size_t(column)];
    c.role = LogRole(index);
    c.reason = "chosen by hand";
    c.doubtful = false;
    if (c.role == LogRole::Unused)
      c.unit.clear();
    else if (!isUnitOf(c.unit, quantityOf(c.role)))
      c.unit = quantityInfo(quantityOf(c.role)).units.front();
    m_table->setCellWidget(int(LogHead::Unit), column, unitChoice(column));
    markReasons();
    emit columnsChanged();
  });
  return choice;
}

QWidget* LogColumnsPage::unitChoice(int column) {
  auto* choice = new LogChoice(tr("Unit of column %1").arg(column + 1),
                               QStringLiteral("log.unit%1").arg(column));
  const LogColumn& now = m_columns.columns[std::size_t(column)];
  choice->setEnabled(now.role != LogRole::Unused);
  if (now.role == LogRole::Unused) return choice;
  for (const std::string_view unit : quantityInfo(quantityOf(now.role)).units)
    choice->addItem(toQString(prettyUnit(unit)), toQString(unit));
  if (choice->findData(toQString(now.unit)) < 0)
    choice->addItem(toQString(prettyUnit(now.unit)), toQString(now.unit));
  choice->setCurrentIndex(choice->findData(toQString(now.unit)));
  connect(choice, &QComboBox::activated, this, [this, column, choice] {
    LogColumn& c = m_columns.columns[std::size_t(column)];
    c.unit = choice->currentData().toString().toStdString();
    c.reason = "unit chosen by hand";
    c.doubtful = false;
    markReasons();
    emit columnsChanged();
  });
  return choice;
}

QWidget* LogColumnsPage::signChoice(int column) {
  auto* choice = new LogChoice(tr("Sign of column %1").arg(column + 1),
                               QStringLiteral("log.sign%1").arg(column));
  choice->addItems({tr("as it stands"), tr("turned (−)")});
  choice->setCurrentIndex(m_columns.columns[std::size_t(column)].sign < 0 ? 1 : 0);
  connect(choice, &QComboBox::activated, this, [this, column](int index) {
    m_columns.columns[std::size_t(column)].sign = index == 1 ? -1 : 1;
    emit columnsChanged();
  });
  return choice;
}

QWidget* LogColumnsPage::factorEntry(int column) {
  auto* entry = new LogEntry(tr("Factor of column %1").arg(column + 1), Quantity::Number, "1",
                             1e-12, 1e12, nullptr);
  entry->setObjectName(QStringLiteral("log.factor%1").arg(column));
  entry->setToolTip(tr("On top of the unit, such as 1 over the ratio for a motor's angle"));
  entry->setValue(m_columns.columns[std::size_t(column)].factor);
  connect(entry, &LogEntry::valueChanged, this, [this, column](double value) {
    m_columns.columns[std::size_t(column)].factor = value;
    emit columnsChanged();
  });
  return entry;
}

void LogColumnsPage::take(tl::expected<LogLayout, InputError> layout) {
  layout ? emit layoutChanged(*layout) : emit refused(layout.error());
}

void LogColumnsPage::changeSigns() {
  if (m_showing || !m_text) return;
  take(layoutWith(m_text->source(), kDelimiters[m_delimiter->currentIndex()],
                  m_decimal->currentIndex() == 1 ? ',' : '.'));
}

void LogColumnsPage::changeLines() {
  if (m_showing || !m_text) return;
  take(layoutFrom(m_text->source(), m_columns.layout, std::size_t(m_titleLine->value()),
                  std::size_t(m_firstRow->value())));
}

void LogColumnsPage::showMends(const MeasuredLog* log) {
  m_mends->setRowCount(0);
  if (log == nullptr) return;
  const auto add = [&](const QString& text, const QString& lines) {
    const int row = m_mends->rowCount();
    m_mends->setRowCount(row + 1);
    m_mends->setItem(row, 0, logCell(text));
    m_mends->setItem(row, 1, logCell(lines));
  };
  for (const LogMend& mend : log->mends) add(upperFirst(toQString(mend.text)), linesText(mend));
  if (log->mends.empty()) add(tr("Nothing: every row is taken as it stands"), {});
}

void LogColumnsPage::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange && m_table != nullptr) markReasons();
  QWidget::changeEvent(event);
}

}  // namespace jw
