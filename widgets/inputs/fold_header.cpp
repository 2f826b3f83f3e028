#include "widgets/inputs/fold_header.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include "widgets/theme/marks.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr int kArrowWidth = 14;  // px
constexpr int kGap = 8;          // px
constexpr int kMark = 9;         // px
constexpr int kPadding = 6;      // px above and below the title

QFont remarkFont() { return textFont(11); }

}  // namespace

FoldHeader::FoldHeader(const QString& title, Remark place, QWidget* parent)
    : QAbstractButton(parent), place_(place) {
  setCheckable(true);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setCursor(Qt::PointingHandCursor);
  setTitle(title);
}

QString FoldHeader::titleText() const {
  return place_ == Remark::Beside ? QString(text()).remove('&') : text();
}

int FoldHeader::topPadding() const { return quiet_ ? kPadding - 2 : kPadding; }

QFont FoldHeader::headingFont() const { return quiet_ ? textFont(11) : titleFont(); }

void FoldHeader::setQuiet(bool quiet) {
  quiet_ = quiet;
  updateGeometry();
  update();
}

void FoldHeader::setTitle(const QString& title) {
  if (title == text() && !accessibleName().isEmpty()) return;
  // A card's title is a person's own words: an ampersand there is no mnemonic.
  setText(title);
  if (place_ == Remark::Below) setShortcut({});
  speak();
}

void FoldHeader::setRemark(const QString& remark) {
  if (remark == remark_) return;
  remark_ = remark;
  speak();
  update();
}

void FoldHeader::setWrong(bool wrong) {
  if (wrong == wrong_) return;
  wrong_ = wrong;
  speak();
  update();
}

void FoldHeader::speak() {
  setAccessibleName(titleText());
  setAccessibleDescription(wrong_ ? tr("holds a wrong entry; %1").arg(remark_) : remark_);
  if (place_ == Remark::Below) setToolTip(titleText() + '\n' + remark_);
}

QSize FoldHeader::sizeHint() const {
  const int title = QFontMetrics(headingFont()).height();
  const int below = place_ == Remark::Below ? QFontMetrics(remarkFont()).height() + 1 : 0;
  return {180, title + below + 2 * topPadding()};
}

QSize FoldHeader::minimumSizeHint() const { return {80, sizeHint().height()}; }

void FoldHeader::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (hasFocus()) {
    painter.setPen(QPen(jw::palette().accent, 1));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
  }
  paintArrow(painter);
  paintTexts(painter);
}

void FoldHeader::paintArrow(QPainter& painter) const {
  const double middle = topPadding() + QFontMetrics(headingFont()).height() / 2.0;
  painter.save();
  painter.translate(6, middle);
  painter.rotate(isChecked() ? 90 : 0);
  QPainterPath arrow(QPointF(-2, -3.5));
  arrow.lineTo(2.5, 0);
  arrow.lineTo(-2, 3.5);
  painter.fillPath(arrow, underMouse() ? jw::palette().accent : jw::palette().text);
  painter.restore();
}

void FoldHeader::paintTexts(QPainter& painter) const {
  const QFontMetrics titles(headingFont());
  const bool beside = place_ == Remark::Beside;
  QRect line(kArrowWidth, topPadding(), width() - kArrowWidth - free_ - 2, titles.height());
  if (wrong_) {
    drawStateMark(painter, CheckState::Short, {line.right() - 5.0, line.center().y() + 0.5}, kMark,
                  jw::palette());
    line.setRight(line.right() - kMark - kGap);
  }
  const QString title = titles.elidedText(titleText(), Qt::ElideRight, line.width());
  painter.setPen(quiet_ ? jw::palette().muted : jw::palette().text);
  painter.setFont(headingFont());
  painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, title);
  if (beside) line.setLeft(line.left() + titles.horizontalAdvance(title) + kGap);
  if (!beside) line = QRect(kArrowWidth, line.bottom() + 2, width() - kArrowWidth, line.height());
  const QString remark =
      QFontMetrics(remarkFont()).elidedText(remark_, Qt::ElideRight, line.width());
  painter.setPen(jw::palette().muted);
  painter.setFont(remarkFont());
  painter.drawText(line, (beside ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, remark);
}

void FoldHeader::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Left || key == Qt::Key_Right) return setChecked(key == Qt::Key_Right);
  if (key == Qt::Key_Return || key == Qt::Key_Enter) return click();
  // QAbstractButton would move the focus; a card moves its item instead.
  if (key == Qt::Key_Up || key == Qt::Key_Down) return event->ignore();
  QAbstractButton::keyPressEvent(event);
}

}  // namespace jw
