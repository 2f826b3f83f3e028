#include "app/title_strip.h"

#include <QGridLayout>
#include <QHBoxLayout>

namespace jw {

TitleStrip::TitleStrip(QWidget* parent)
    : QWidget(parent),
      menus_(new QMenuBar(this)),
      title_(new ElidedLabel(this)),
      variant_(new QToolButton(this)),
      saved_(new QLabel(this)) {
  setObjectName("title");
  title_->setObjectName("title.project");
  title_->setProperty("role", "title");
  title_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  variant_->setObjectName("title.variant");
  variant_->setPopupMode(QToolButton::InstantPopup);
  variant_->setFocusPolicy(Qt::TabFocus);
  saved_->setObjectName("title.saved");
  saved_->setProperty("role", "muted");
  saved_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  auto* middle = new QHBoxLayout;
  middle->addWidget(title_, 1);
  middle->addWidget(variant_);
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(8, 4, 16, 2);
  grid->addWidget(menus_, 0, 0, Qt::AlignLeft | Qt::AlignVCenter);
  grid->addLayout(middle, 0, 1);
  grid->addWidget(saved_, 0, 2);
  grid->setColumnStretch(0, 1);  // the outer columns share what is left: the middle is centred
  grid->setColumnStretch(2, 1);
}

void TitleStrip::setProject(const QString& title, const QString& variant) {
  title_->setText(title);
  variant_->setText(tr("variant %1 ▾").arg(variant));
  variant_->setAccessibleName(tr("Variant %1: choose, duplicate, rename, remove").arg(variant));
}

void TitleStrip::setSaved(const QString& state) { saved_->setText(state); }

}  // namespace jw
