#pragma once

#include <vector>

#include <QByteArray>
#include <QScrollArea>
#include <QStringList>

#include "widgets/edit.h"
#include "widgets/inputs/card_list.h"
#include "widgets/inputs/form.h"
#include "widgets/inputs/section.h"
#include "widgets/snapshot.h"

namespace jw {

/// Every input of the project by station, each section collapsible. It shows a project and asks for
/// edits; it changes nothing itself. Rows are generated from the field catalogue.
class InputsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit InputsPanel(QWidget* parent = nullptr);

  /// Shows the project in place: focus, cursor, unfolded parts and wrong entries stay, unless the
  /// field behind them changed.
  void showProject(const Project& project);

  /// Marks the empty fields that a check waits for as "needed".
  void showSnapshot(const Snapshot& snapshot);

  bool hasWrongEntry() const { return wrong_; }
  /// Gives up every wrong entry, e.g. before another project is shown.
  void discardWrongEntries();

  /// Which sections are unfolded, for the window's settings.
  QByteArray saveState() const;
  /// False, with nothing changed, if `state` was not made by saveState().
  bool restoreState(const QByteArray& state);

 public slots:
  /// Unfolds, scrolls to and focuses a field ("transmission[1].ratio"), an item
  /// ("cycle.segments[0]") or a section ("supply", "motor", "transmission"). Unknown paths do
  /// nothing.
  void reveal(const QString& path);

 signals:
  void editRequested(const jw::Edit& edit);
  void wrongEntryChanged(bool wrong);
  void tableRequested(int segmentIndex);
  void logRequested();  ///< a measured log for the cycle
  void partsRequested(int stageIndex);  ///< what the stage can be built of
  void robotRequested();                ///< the load from a robot description

 protected:
  QSize sizeHint() const override;

 private:
  void build(const ProjectFields& fields);
  void addSection(const QString& name, const QString& title, bool expanded);
  void addForm(const FieldGroup* group, bool titled = false);
  CardList* addList(ListPlan plan);
  void addRobotButton();
  std::vector<Form*> forms() const;
  FieldRow* findRow(const QString& path) const;
  Section* findSection(const QString& name) const;
  QString sectionOf(const QString& path) const;
  void showPart(QWidget* part, QWidget* focus);
  void updateWrong();
  void updateRemarks();
  void updateTabOrder();
  void updateNeeded();

  QScrollArea* scroll_;
  QWidget* content_;
  std::vector<Section*> sections_;
  std::vector<Form*> forms_;  ///< of the structs that are always there
  std::vector<CardList*> lists_;
  QStringList needed_;
  bool wrong_ = false;
};

}  // namespace jw
