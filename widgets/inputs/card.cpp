#include "widgets/inputs/card.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QMenu>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include "widgets/inputs/field_text.h"
#include "widgets/inputs/fold_header.h"

namespace jw {
namespace {

constexpr int kButtonSize = 22;  // px

}  // namespace

Card::Card(const ListPlan& plan, const FieldGroup& fields, int index, QWidget* parent)
    : QFrame(parent),
      plan_(plan),
      index_(index),
      header_(new FoldHeader({}, FoldHeader::Remark::Below, this)),
      form_(nullptr),
      up_(makeMoveButton(Action::MoveUp)),
      down_(makeMoveButton(Action::MoveDown)) {
  setObjectName(fields.path);
  setProperty("role", "panel");
  header_->setObjectName(name("header"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 2, 6, 2);
  column->setSpacing(2);
  column->addLayout(makeHeading());
  form_ = new Form(fields, this);
  column->addWidget(makeBody());
  connect(form_, &Form::editRequested, this, &Card::editRequested);
  connect(form_, &Form::rowsChanged, this, &Card::rowsChanged);
  connect(form_, &Form::wrongChanged, this, [this] {
    header_->setWrong(form_->hasWrongEntry());
    emit wrongChanged();
  });
}

QString Card::name(const char* part) const {
  return QString("%1[%2].%3").arg(plan_.path).arg(index_).arg(QLatin1String(part));
}

/// The buttons stand on the heading's first line; its second line runs below them.
QGridLayout* Card::makeHeading() {
  auto* heading = new QGridLayout;
  heading->setSpacing(0);
  const std::initializer_list<QToolButton*> buttons{up_, down_, makeMenuButton()};
  const int count = static_cast<int>(buttons.size());
  heading->addWidget(header_, 0, 0, 1, count + 1);
  heading->setColumnStretch(0, 1);
  int column = 0;
  for (QToolButton* button : buttons) {
    button->setFixedSize(kButtonSize, kButtonSize);
    button->setFocusPolicy(Qt::TabFocus);
    button->raise();
    heading->addWidget(button, 0, ++column, Qt::AlignTop);
  }
  header_->keepFree(count * kButtonSize);
  return heading;
}

QToolButton* Card::makeMoveButton(Action action) {
  const bool up = action == Action::MoveUp;
  auto* button = new QToolButton(this);
  button->setArrowType(up ? Qt::UpArrow : Qt::DownArrow);
  button->setObjectName(name(up ? "moveUp" : "moveDown"));
  const QString text = QString("Move %1 %2").arg(plan_.item, up ? plan_.earlier : plan_.later);
  button->setAccessibleName(text);
  button->setToolTip(text);
  connect(button, &QToolButton::clicked, this, [this, action] { emit actionRequested(action); });
  return button;
}

QToolButton* Card::makeMenuButton() {
  auto* button = new QToolButton(this);
  button->setText(QStringLiteral("⋯"));
  button->setObjectName(name("more"));
  button->setAccessibleName(QString("More for this %1").arg(plan_.item));
  button->setPopupMode(QToolButton::InstantPopup);
  button->setStyleSheet(
      "QToolButton { padding: 0px; } QToolButton::menu-indicator { image: none; }");
  auto* menu = new QMenu(button);
  menu->addAction(tr("&Duplicate"), this, [this] { emit actionRequested(Action::Duplicate); });
  menu->addAction(tr("&Remove"), this, [this] { emit actionRequested(Action::Remove); });
  button->setMenu(menu);
  return button;
}

QWidget* Card::makeBody() {
  auto* body = new QWidget(this);
  auto* column = new QVBoxLayout(body);
  column->setContentsMargins(0, 2, 0, 6);
  column->setSpacing(6);
  column->addWidget(form_);
  if (!plan_.openText.isEmpty()) {
    open_ = new QPushButton(plan_.openText, body);
    open_->setObjectName(name("open"));
    open_->setAccessibleName(plan_.openText);
    connect(open_, &QPushButton::clicked, this, [this] { emit actionRequested(Action::Open); });
    column->addWidget(open_);
  }
  body->setVisible(false);
  connect(header_, &QAbstractButton::toggled, body, &QWidget::setVisible);
  return body;
}

void Card::showItem(const FieldGroup& fields, int count) {
  form_->showFields(fields);
  const CardText text = plan_.text(fields, index_);
  header_->setTitle(text.title);
  header_->setRemark(text.remark);
  up_->setEnabled(index_ > 0);
  down_->setEnabled(index_ + 1 < count);
  if (open_ != nullptr) open_->setVisible(plan_.opens(fields));
}

bool Card::isExpanded() const { return header_->isChecked(); }

void Card::setExpanded(bool expanded) { header_->setChecked(expanded); }

QWidget* Card::button(Action action) const {
  switch (action) {
    case Action::MoveUp: return up_;
    case Action::MoveDown: return down_;
    case Action::Open: return open_;
    case Action::Duplicate:
    case Action::Remove: break;
  }
  return nullptr;
}

void Card::keyPressEvent(QKeyEvent* event) {
  const bool alt = event->modifiers().testFlag(Qt::AltModifier);
  if (!header_->hasFocus()) return QFrame::keyPressEvent(event);
  if (alt && event->key() == Qt::Key_Up && up_->isEnabled()) {
    emit actionRequested(Action::MoveUp);
  } else if (alt && event->key() == Qt::Key_Down && down_->isEnabled()) {
    emit actionRequested(Action::MoveDown);
  } else if (event->key() == Qt::Key_Delete) {
    emit actionRequested(Action::Remove);
  } else {
    QFrame::keyPressEvent(event);
  }
}

}  // namespace jw
