#include "widgets/cycle/move_editor.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QMenu>
#include <QVBoxLayout>

#include "core/motion/segment_input.h"
#include "widgets/cycle/move_edits.h"
#include "widgets/inputs/field_text.h"

namespace jw {
namespace {

std::vector<FieldStrip::Item> limitItems() {
  return {{"speedLimit", MoveEditor::tr("speed")},
          {"accelerationLimit", MoveEditor::tr("accel.")},
          {"jerkLimit", MoveEditor::tr("jerk")}};
}

std::vector<RowTable::Width> columnWidths() {
  return {{24}, {78, 5}, {106, 2}, {38}, {64, 1}, {46}, {64, 1}, {58, 1}, {58, 1}, {30}, {48, 1}};
}

}  // namespace

MoveEditor::MoveEditor(QWidget* parent)
    : QWidget(parent),
      m_curve(new MoveCurve),
      m_model(new MoveTableModel(this)),
      m_table(new RowTable(m_model, columnWidths())),
      m_cycleFields(new FieldStrip(tr("Limits"), structInfo<Cycle>(), limitItems())),
      m_moveLimits(new FieldStrip(tr("This move"), structInfo<Segment>(), limitItems())),
      m_remark(new QLabel),
      m_reading(new QLabel) {
  setObjectName(QStringLiteral("moves"));
  m_table->setObjectName(QStringLiteral("moves.table"));
  m_table->setAccessibleName(tr("Moves"));
  m_remark->setObjectName(QStringLiteral("moves.remark"));
  m_remark->setProperty("role", "error");
  m_remark->setTextFormat(Qt::PlainText);
  m_remark->setWordWrap(true);
  m_reading->setObjectName(QStringLiteral("moves.reading"));
  m_reading->setProperty("role", "muted");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 4);
  column->setSpacing(4);
  column->addWidget(m_curve, 5);
  column->addWidget(makeHead());
  column->addWidget(m_table, 6);
  column->addWidget(makeButtons());
  connectParts();
}

QWidget* MoveEditor::makeHead() {
  auto* head = new QWidget(this);
  auto* lines = new QVBoxLayout(head);
  lines->setContentsMargins(12, 0, 12, 0);
  lines->setSpacing(4);
  lines->addWidget(m_remark);
  lines->addWidget(m_cycleFields);
  lines->addWidget(m_moveLimits);
  m_moveLimits->hide();
  return head;
}

QToolButton* MoveEditor::addButton(const QString& text, const char* name, const QString& tip,
                                   void (MoveEditor::*pressed)()) {
  auto* button = new QToolButton(m_buttons);
  button->setObjectName(QString("moves.%1").arg(name));
  button->setText(text);
  button->setToolTip(tip);
  button->setAccessibleName(tip);
  m_buttons->layout()->addWidget(button);
  if (pressed != nullptr) connect(button, &QToolButton::clicked, this, pressed);
  return button;
}

QWidget* MoveEditor::makeButtons() {
  m_buttons = new QWidget(this);
  auto* line = new QHBoxLayout(m_buttons);
  line->setContentsMargins(8, 0, 12, 0);
  line->setSpacing(2);
  QToolButton* add =
      addButton(tr("&Add"), "add", tr("Add a move behind the chosen one (Insert)"), nullptr);
  auto* menu = new QMenu(add);
  const FieldInfo& laws = *structInfo<Segment>().find("law");
  for (std::size_t k = 0; k < laws.choices.size(); ++k) {
    menu->addAction(upperFirst(toQString(laws.choices[k].label)), this,
                    [this, k] { addMove(static_cast<MotionLaw>(k)); });
  }
  add->setMenu(menu);
  add->setPopupMode(QToolButton::InstantPopup);
  addButton(tr("D&uplicate"), "duplicate", tr("Duplicate the chosen moves (Ctrl+D)"),
            &MoveEditor::duplicate);
  addButton(tr("De&lete"), "delete", tr("Delete the chosen moves (Delete)"), &MoveEditor::remove);
  addButton(QStringLiteral("↑"), "up", tr("Earlier (Alt+Up)"), &MoveEditor::shiftUp);
  addButton(QStringLiteral("↓"), "down", tr("Later (Alt+Down)"), &MoveEditor::shiftDown);
  addButton(tr("&Off / on"), "off", tr("Leave the chosen moves out, or take them in (Space)"),
            &MoveEditor::switchOff);
  addButton(tr("&Block"), "block",
            tr("Repeat the chosen neighbours together, or take them out of their block"),
            &MoveEditor::toggleBlock);
  addButton(tr("&Fields…"), "fields", tr("Show every field of the move among the inputs"),
            &MoveEditor::revealFields);
  m_reading->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  m_reading->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  line->addWidget(m_reading, 1);
  return m_buttons;
}

void MoveEditor::connectParts() {
  connect(m_model, &MoveTableModel::editRequested, this, &MoveEditor::editRequested);
  connect(m_curve, &MoveCurve::editRequested, this, &MoveEditor::editRequested);
  connect(m_curve, &MoveCurve::cursorDragged, this, &MoveEditor::cursorDragged);
  connect(m_curve, &MoveCurve::reading, m_reading, &QLabel::setText);
  connect(m_curve, &MoveCurve::moveChosen, this,
          [this](int row) { m_table->chooseRows(row, row); });
  const auto refuse = [this](const QString& message) {
    message.isEmpty() ? showRemarks() : m_remark->setText(message);
    m_remark->setVisible(!m_remark->text().isEmpty());
  };
  connect(m_model, &MoveTableModel::entryRefused, this, refuse);
  for (FieldStrip* strip : {m_cycleFields, m_moveLimits}) {
    connect(strip, &FieldStrip::editRequested, this, &MoveEditor::editRequested);
    connect(strip, &FieldStrip::entryRefused, this, refuse);
  }
  connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this,
          &MoveEditor::followChoice);
  connect(m_table, &RowTable::addPressed, this, &MoveEditor::addSame);
  connect(m_table, &RowTable::deletePressed, this, &MoveEditor::remove);
  connect(m_table, &RowTable::duplicatePressed, this, &MoveEditor::duplicate);
  connect(m_table, &RowTable::shiftPressed, this, &MoveEditor::shift);
  connect(m_table, &RowTable::switchPressed, this, &MoveEditor::switchOff);
}

void MoveEditor::showSnapshot(const Snapshot& snapshot) {
  const MovesView view = movesView(snapshot);
  const std::vector<int> chosen = m_table->chosenRows();
  const int before = m_model->rowCount();
  m_model->showView(view);
  if (m_choice[0] >= 0 && m_model->rowCount() != before) {
    m_table->chooseRows(m_choice[0], m_choice[1]);
    m_choice[0] = -1;
  } else if (m_model->rowCount() != before && !chosen.empty()) {
    m_table->chooseRows(chosen.front(), chosen.back());
  }
  m_curve->showView(view);
  showRemarks();
  followChoice();
}

/// What is broken, in words; the curve marks where.
void MoveEditor::showRemarks() {
  const MovesView& view = m_model->view();
  QString text = view.lacking;
  if (!view.remarks.empty()) text = view.remarks.front();
  if (view.remarks.size() > 1) text += tr(" (and %1 more)").arg(view.remarks.size() - 1);
  QStringList all;
  for (const QString& remark : view.remarks) all << remark;
  m_remark->setText(text);
  m_remark->setToolTip(all.join('\n'));
  m_remark->setVisible(!text.isEmpty());
}

void MoveEditor::followChoice() {
  const MovesView& view = m_model->view();
  if (!view.project) return;
  const int row = m_table->currentIndex().row();
  m_curve->setChosen(row);
  m_cycleFields->showFields(*view.project, QStringLiteral("cycle"));
  const bool limited =
      row >= 0 && row < m_model->rowCount() &&
      appliesNow(fieldOf(view.moves()[static_cast<std::size_t>(row)], {}, "speedLimit"));
  m_moveLimits->setVisible(limited);
  if (!limited) return;
  m_moveLimits->showFields(*view.project,
                           QString::fromStdString(segmentPath(static_cast<std::size_t>(row))));
}

int MoveEditor::lastChosen() const {
  const std::vector<int> rows = m_table->chosenRows();
  return rows.empty() ? m_model->rowCount() - 1 : rows.back();
}

/// Chooses rows that the next project will have.
void MoveEditor::chooseAfter(int first, int last) {
  m_choice[0] = std::max(first, 0);
  m_choice[1] = std::max(last, 0);
}

void MoveEditor::addMove(MotionLaw law) {
  const int behind = lastChosen();
  chooseAfter(behind + 1, behind + 1);
  emit editRequested(moves::add(behind, law));
}

/// As the chosen one, else the usual law.
void MoveEditor::addSame() {
  const int row = m_table->currentIndex().row();
  const bool chosen = row >= 0 && row < m_model->rowCount();
  addMove(chosen ? m_model->view().moves()[static_cast<std::size_t>(row)].law
                 : MotionLaw::Trapezoidal);
}

void MoveEditor::duplicate() {
  const std::vector<int> rows = m_table->chosenRows();
  if (rows.empty()) return;
  chooseAfter(rows.back() + 1, rows.back() + static_cast<int>(rows.size()));
  emit editRequested(moves::duplicate(rows));
}

void MoveEditor::remove() {
  const std::vector<int> rows = m_table->chosenRows();
  if (rows.empty()) return;
  chooseAfter(rows.front(), rows.front());
  emit editRequested(moves::remove(rows));
}

void MoveEditor::shift(int by) {
  const std::vector<int> rows = m_table->chosenRows();
  const bool fits =
      !rows.empty() && rows.front() + by >= 0 && rows.back() + by < m_model->rowCount();
  if (!fits) return;
  emit editRequested(moves::shift(rows, by));
  m_table->chooseRows(rows.front() + by, rows.back() + by);
}

void MoveEditor::switchOff() {
  const std::vector<int> rows = m_table->chosenRows();
  if (!rows.empty()) emit editRequested(moves::switchOff(*m_model->view().project, rows));
}

void MoveEditor::toggleBlock() {
  const std::vector<int> rows = m_table->chosenRows();
  if (!rows.empty()) emit editRequested(moves::block(*m_model->view().project, rows));
}

void MoveEditor::revealFields() {
  const int row = m_table->currentIndex().row();
  if (row < 0) return emit fieldRequested(QStringLiteral("cycle"));
  emit fieldRequested(QString::fromStdString(segmentPath(static_cast<std::size_t>(row))));
}

}  // namespace jw
