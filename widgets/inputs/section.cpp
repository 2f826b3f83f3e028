#include "widgets/inputs/section.h"

#include <QFrame>
#include <QPalette>
#include <QVBoxLayout>

namespace jw {
namespace {

QFrame* makeHairline(QWidget* parent) {
  auto* line = new QFrame(parent);
  line->setFrameShape(QFrame::HLine);
  line->setFrameShadow(QFrame::Plain);
  line->setForegroundRole(QPalette::Mid);
  line->setFixedHeight(1);
  return line;
}

}  // namespace

Section::Section(const QString& name, const QString& title, QWidget* parent)
    : QWidget(parent),
      name_(name),
      header_(new FoldHeader(title, FoldHeader::Remark::Beside, this)),
      body_(new QWidget(this)),
      contents_(new QVBoxLayout(body_)) {
  setObjectName("section." + name);
  header_->setObjectName("section." + name + ".header");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(header_);
  column->addWidget(makeHairline(this));
  column->addWidget(body_);
  contents_->setContentsMargins(0, 6, 0, 10);
  contents_->setSpacing(6);
  body_->setVisible(false);
  connect(header_, &QAbstractButton::toggled, body_, &QWidget::setVisible);
}

void Section::add(QWidget* content) { contents_->addWidget(content); }

}  // namespace jw
