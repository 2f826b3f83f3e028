#pragma once

#include "core/model/project.h"
#include "widgets/inputs/choice_box.h"

namespace jw {

/// A choice in the head of a figure.
class Chooser : public ChoiceBox {
 public:
  explicit Chooser(const QString& objectName, const QString& accessibleName,
                   QWidget* parent = nullptr);
};

/// One number of the project, chosen by its trade name or its path: typing narrows the list to the
/// names that contain what was typed.
class FieldChooser : public Chooser {
  Q_OBJECT

 public:
  FieldChooser(const QString& objectName, const QString& accessibleName, QWidget* parent = nullptr);

  /// Offers the project's numbers; keeps the choice while it is one of them.
  void offer(const Project& project);
  void setPath(const std::string& path);
  std::string path() const;

 signals:
  void pathChosen();

 protected:
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void take(int index);
  void takeTyped();
  void showChosen();

  std::vector<std::string> m_paths;
  int m_chosen = -1;
};

/// "Payload mass", with the stage or the segment it belongs to: "Ratio, stage 2".
QString fieldTitle(const Project& project, const std::string& path);

}  // namespace jw
