#include "widgets/figures/range_fields.h"

#include <QHBoxLayout>
#include <QKeyEvent>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/wrong_mark.h"

namespace jw {

RangeFields::RangeFields(const QString& name, QWidget* parent)
    : QWidget(parent), m_from(new QLineEdit(this)), m_to(new QLineEdit(this)) {
  setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(4);
  const auto add = [&](QLineEdit* field, const QString& word, const QString& suffix) {
    auto* label = new QLabel(word, this);
    label->setProperty("role", "muted");
    field->setObjectName(name + suffix);
    field->setMinimumWidth(64);
    field->setMaximumWidth(104);
    field->setAlignment(Qt::AlignRight);
    field->installEventFilter(this);
    line->addWidget(label);
    line->addWidget(field);
    connect(field, &QLineEdit::editingFinished, this, [this, field] { take(field); });
  };
  add(m_from, tr("from"), QStringLiteral(".from"));
  add(m_to, tr("to"), QStringLiteral(".to"));
}

void RangeFields::showRange(const FieldInfo& info, const StudyRange& range) {
  const bool other = m_info != &info;
  m_info = &info;
  m_range = range;
  m_from->setAccessibleName(tr("%1, from").arg(spokenName(info)));
  m_to->setAccessibleName(tr("%1, to").arg(spokenName(info)));
  if (other || !m_from->isModified()) showText(m_from, range.from);
  if (other || !m_to->isModified()) showText(m_to, range.to);
}

void RangeFields::showText(QLineEdit* field, double value) {
  setWrong(field, {});
  const QString text =
      QString::fromStdString(formatQuantity(value, m_info->quantity, m_info->unit, 4));
  field->setText(isSet(value) ? text : QString());
  field->setCursorPosition(0);
  field->setModified(false);
}

void RangeFields::setWrong(QLineEdit* field, const QString& message) {
  setWrongMark(*field, *m_info, message);
  field->setToolTip(message.isEmpty() ? tr("Empty = the usual range") : message);
}

void RangeFields::take(QLineEdit* field) {
  if (m_info == nullptr || !field->isModified()) return;
  StudyRange range = m_range;
  double& end = field == m_from ? range.from : range.to;
  if (field->text().trimmed().isEmpty()) {
    field->setModified(false);
    end = kUnset;
    return emit rangeTyped(range);
  }
  const auto value = readField(*m_info, field->text().toStdString());
  if (!value) return setWrong(field, errorText(value.error()));
  end = *value;
  if (!range.rises())
    return setWrong(field, tr("The range does not rise; give the smaller end first"));
  m_range = range;
  showText(field, end);
  emit rangeTyped(range);
}

// Escape gives up what was typed.
bool RangeFields::eventFilter(QObject* watched, QEvent* event) {
  auto* field = watched == m_from ? m_from : m_to;
  if (event->type() == QEvent::KeyPress && m_info != nullptr &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && field->isModified()) {
    showText(field, field == m_from ? m_range.from : m_range.to);
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace jw
