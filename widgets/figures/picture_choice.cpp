#include "widgets/figures/picture_choice.h"

#include <QButtonGroup>
#include <QHBoxLayout>

#include "widgets/figures/segment_button.h"

namespace jw {

PictureChoice makePictureChoice(const std::vector<PictureName>& pictures,
                                const QString& readingName, QWidget* parent) {
  PictureChoice choice;
  choice.header = new QWidget(parent);
  auto* line = new QHBoxLayout(choice.header);
  line->setContentsMargins(12, 6, 12, 0);
  line->setSpacing(4);
  auto* group = new QButtonGroup(choice.header);
  for (const PictureName& picture : pictures) {
    QToolButton* button = makeSegmentButton(picture.text, picture.objectName, choice.header);
    group->addButton(button);
    line->addWidget(button);
    choice.buttons.push_back(button);
  }
  choice.buttons.front()->setChecked(true);
  choice.reading = new QLabel(choice.header);
  choice.reading->setObjectName(readingName);
  choice.reading->setProperty("role", "muted");
  choice.reading->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  choice.reading->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  line->addWidget(choice.reading, 1);
  return choice;
}

}  // namespace jw
