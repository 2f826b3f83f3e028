#pragma once

#include <vector>

#include <QLabel>
#include <QToolButton>

namespace jw {

/// The head of a figure with several pictures: a button for each, and a reading at the right.
struct PictureChoice {
  QWidget* header = nullptr;
  std::vector<QToolButton*> buttons;
  QLabel* reading = nullptr;
};

/// A name on a button and the button's object name.
struct PictureName {
  QString text;
  QString objectName;
};

PictureChoice makePictureChoice(const std::vector<PictureName>& pictures,
                                const QString& readingName, QWidget* parent);

}  // namespace jw
