#pragma once

#include <QToolButton>

namespace jw {

/// A small button that stays down, for the head of a figure.
inline QToolButton* makeSegmentButton(const QString& text, const QString& objectName,
                                      QWidget* parent) {
  auto* button = new QToolButton(parent);
  button->setObjectName(objectName);
  button->setProperty("role", "segment");
  button->setText(text);
  button->setCheckable(true);
  return button;
}

}  // namespace jw
