#include "widgets/panels/log_fields.h"

#include <algorithm>
#include <cmath>

#include <QHeaderView>
#include <QStylePainter>

#include "widgets/inputs/field_text.h"
#include "widgets/theme/number_text.h"

namespace jw {
namespace {

constexpr int kArrowRoom = 20;  // [px] at the right of a choice or spin box

}  // namespace

LogEntry::LogEntry(const QString& name, Quantity quantity, std::string_view unit, double low,
                   double high, QWidget* parent)
    : QLineEdit(parent), m_quantity(quantity), m_unit(unit), m_low(low), m_high(high) {
  setAccessibleName(name);
  connect(this, &QLineEdit::textEdited, this, [this] { mark({}); });
  connect(this, &QLineEdit::editingFinished, this, &LogEntry::read);
}

void LogEntry::setValue(double value) {
  m_value = value;
  if (hasFocus() && isModified()) return;
  setText(isSet(value) ? quantityText(value, m_quantity, m_unit, 6) : QString());
  mark({});
}

void LogEntry::mark(const QString& reason) {
  setToolTip(reason);
  setProperty("state", reason.isEmpty() ? QVariant() : QVariant("wrong"));
  style()->unpolish(this);
  style()->polish(this);
}

void LogEntry::read() {
  if (!isModified()) return;
  const auto parsed = parseQuantity(text().toStdString(), m_quantity, m_unit);
  if (!parsed) return mark(errorText(parsed.error()));
  if (!(parsed->value >= m_low && parsed->value <= m_high))
    return mark(tr("give a value from %1 to %2")
                    .arg(quantityText(m_low, m_quantity, m_unit),
                         quantityText(m_high, m_quantity, m_unit)));
  setModified(false);
  setValue(parsed->value);
  emit valueChanged(m_value);
}

QLabel* makeLogLabel(const QString& text, const char* role, const QString& objectName) {
  auto* label = new QLabel(text);
  label->setObjectName(objectName);
  label->setProperty("role", role);
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return label;
}

LogChoice::LogChoice(const QString& name, const QString& objectName, QWidget* parent)
    : QComboBox(parent) {
  setObjectName(objectName);
  setAccessibleName(name);
  setFocusPolicy(Qt::StrongFocus);
}

void LogChoice::paintEvent(QPaintEvent* event) {
  QComboBox::paintEvent(event);
  QStylePainter painter(this);
  QStyleOption option;
  option.initFrom(this);
  option.rect = QRect(width() - kArrowRoom, 0, kArrowRoom, height());
  painter.drawPrimitive(QStyle::PE_IndicatorArrowDown, option);
}

LogSpin::LogSpin(const QString& name, const QString& objectName, double low, double high,
                 int decimals, QWidget* parent)
    : QDoubleSpinBox(parent) {
  setObjectName(objectName);
  setAccessibleName(name);
  setLocale(QLocale::c());
  setDecimals(decimals);
  setRange(low, high);
  setKeyboardTracking(false);
  if (decimals > 0) setStepType(QAbstractSpinBox::AdaptiveDecimalStepType);
}

void LogSpin::paintEvent(QPaintEvent* event) {
  QDoubleSpinBox::paintEvent(event);
  QStylePainter painter(this);
  QStyleOption option;
  option.initFrom(this);
  const int middle = height() / 2;
  option.rect = QRect(width() - kArrowRoom, middle - 8, kArrowRoom, 8);
  painter.drawPrimitive(QStyle::PE_IndicatorArrowUp, option);
  option.rect = QRect(width() - kArrowRoom, middle, kArrowRoom, 8);
  painter.drawPrimitive(QStyle::PE_IndicatorArrowDown, option);
}

void fitHeight(QTableWidget& table) {
  table.resizeRowsToContents();
  const int rows = table.rowCount() > 0 ? table.verticalHeader()->length() : 0;
  table.setFixedHeight(rows + table.horizontalHeader()->sizeHint().height() + 2);
}

QTableWidget* makeLogTable(const QString& name, const QString& objectName,
                           const QStringList& titles) {
  auto* table = new QTableWidget(0, int(titles.size()));
  table->setObjectName(objectName);
  table->setAccessibleName(name);
  table->setHorizontalHeaderLabels(titles);
  table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  table->horizontalHeader()->setStretchLastSection(true);
  table->verticalHeader()->hide();
  table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  table->setShowGrid(false);
  table->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  table->setTabKeyNavigation(false);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  return table;
}

QTableWidgetItem* logCell(const QString& text, bool number) {
  auto* item = new QTableWidgetItem(text);
  item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
  if (number) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
  return item;
}

QString uncertainText(double value, double uncertainty) {
  if (std::isnan(value)) return QStringLiteral("–");
  const double ratio = std::max(std::abs(value / uncertainty), 1.0);
  const int digits = std::isfinite(ratio) ? std::clamp(int(std::log10(ratio)) + 2, 2, 8) : 6;
  return QStringLiteral("%1 ± %2").arg(numberText(value, digits), numberText(uncertainty, 2));
}

}  // namespace jw
