#include "app/message_strip.h"

#include <QHBoxLayout>
#include <QStyle>
#include <QToolButton>

namespace jw {
namespace {

constexpr std::size_t kMostRemarks = 4;

}  // namespace

MessageStrip::MessageStrip(QWidget* parent) : QFrame(parent), text_(new QLabel(this)) {
  setObjectName("message");
  setProperty("role", "panel");
  text_->setObjectName("message.text");
  text_->setWordWrap(true);
  text_->setTextFormat(Qt::PlainText);
  text_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  auto* close = new QToolButton(this);
  close->setObjectName("message.close");
  close->setText(tr("Close"));
  close->setProperty("role", "link");
  connect(close, &QToolButton::clicked, this, &QWidget::hide);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(14, 8, 10, 8);
  row->addWidget(text_, 1);
  row->addWidget(close, 0, Qt::AlignTop);
  hide();
}

void MessageStrip::showText(const QString& text, bool wrong) {
  text_->setProperty("role", wrong ? "error" : "muted");
  text_->style()->unpolish(text_);
  text_->style()->polish(text_);
  text_->setText(text);
  setAccessibleName(text);
  show();
}

void MessageStrip::showError(const InputError& error) {
  showText(QString::fromStdString(describe(error)), true);
}

void MessageStrip::showRemarks(const std::vector<InputError>& notes) {
  if (notes.empty()) return hide();
  QStringList lines;
  for (std::size_t k = 0; k < notes.size() && k < kMostRemarks; ++k) {
    lines << QString::fromStdString(describe(notes[k]));
  }
  if (notes.size() > kMostRemarks) lines << tr("and %1 more").arg(notes.size() - kMostRemarks);
  showText(lines.join('\n'), false);
}

}  // namespace jw
