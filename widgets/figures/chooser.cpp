#include "widgets/figures/chooser.h"

#include <QCompleter>
#include <QLineEdit>
#include <QSignalBlocker>

#include "core/studies/study_ranges.h"
#include "widgets/inputs/field_text.h"

namespace jw {

Chooser::Chooser(const QString& objectName, const QString& accessibleName, QWidget* parent)
    : ChoiceBox(parent) {
  setObjectName(objectName);
  setAccessibleName(accessibleName);
  setToolTip(accessibleName);
}

QString fieldTitle(const Project& project, const std::string& path) {
  const auto field = findField(project, path);
  if (!field) return QString::fromStdString(path);
  const QString label = toQString(field->info->label);
  const auto open = path.find('[');
  if (open == std::string::npos) return label;
  const QString number = QString::number(std::stoi(path.substr(open + 1)) + 1);
  if (path.starts_with("transmission")) return label + QObject::tr(", stage ") + number;
  return QStringLiteral("%1, %2 %3")
      .arg(label, toQString(field->structInfo->title).toLower(), number);
}

FieldChooser::FieldChooser(const QString& objectName, const QString& accessibleName,
                           QWidget* parent)
    : Chooser(objectName, accessibleName, parent) {
  setEditable(true);
  setInsertPolicy(QComboBox::NoInsert);
  setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  setMinimumContentsLength(7);
  setMaxVisibleItems(16);
  completer()->setFilterMode(Qt::MatchContains);
  completer()->setCompletionMode(QCompleter::PopupCompletion);
  completer()->setCaseSensitivity(Qt::CaseInsensitive);
  lineEdit()->setAccessibleName(accessibleName);
  connect(this, &QComboBox::activated, this, &FieldChooser::take);
  connect(lineEdit(), &QLineEdit::returnPressed, this, &FieldChooser::takeTyped);
}

void FieldChooser::offer(const Project& project) {
  std::vector<std::string> paths;
  for (const FieldRef& field : sweepFields(project)) paths.push_back(field.path);
  if (paths == m_paths) return;  // what is being typed stays
  const std::string chosen = path();
  const QSignalBlocker quiet(this);
  clear();
  for (const std::string& one : paths) {
    const QString shown = QString::fromStdString(one);
    addItem(fieldTitle(project, one) + QStringLiteral("  ·  ") + shown, shown);
  }
  m_paths = std::move(paths);
  m_chosen = -1;
  setPath(chosen);
}

void FieldChooser::setPath(const std::string& path) {
  const int found = findData(QString::fromStdString(path));
  if (found >= 0) m_chosen = found;
  showChosen();
}

std::string FieldChooser::path() const {
  return m_chosen < 0 ? std::string() : itemData(m_chosen).toString().toStdString();
}

void FieldChooser::take(int index) {
  if (index < 0 || index == m_chosen) return showChosen();
  m_chosen = index;
  showChosen();
  emit pathChosen();
}

// Enter takes the first of the names that contain what was typed.
void FieldChooser::takeTyped() {
  if (m_chosen >= 0 && currentText() == itemText(m_chosen)) return;
  take(findText(completer()->currentCompletion()));
}

void FieldChooser::showChosen() {
  setCurrentIndex(m_chosen);
  setToolTip(m_chosen < 0 ? QString() : itemText(m_chosen));
  lineEdit()->setCursorPosition(0);
}

// Text that names no field is given up.
void FieldChooser::focusOutEvent(QFocusEvent* event) {
  Chooser::focusOutEvent(event);
  if (event->reason() != Qt::PopupFocusReason) showChosen();
}

}  // namespace jw
