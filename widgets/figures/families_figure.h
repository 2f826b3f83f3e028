#pragma once

#include <array>

#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QStackedWidget>
#include <QTableView>

#include "widgets/figures/family_table_model.h"
#include "widgets/figures/figure.h"
#include "widgets/figures/line_chart_canvas.h"
#include "widgets/panels/catalogue_choice.h"
#include "widgets/study_thread.h"

namespace jw {

/// The same joint with each family of reducers: a table of properties with bars, and two of them
/// against one another. Works while it is in front; what it had stays until the next is there.
class FamiliesFigure : public Figure {
  Q_OBJECT

 public:
  enum class Picture { Table, Map };

  explicit FamiliesFigure(QWidget* parent = nullptr);

  void showSnapshot(const Snapshot& snapshot) override;
  QString figureName() const override { return QStringLiteral("families"); }
  QString exportName() const override;
  QString title() const override { return tr("Families"); }
  void addStudies(Snapshot& snapshot) const override;

  void setPicture(Picture picture);
  const FamilyStudy* study() const { return m_study.get(); }
  /// Whether what is shown belongs to the project that is open.
  bool isUpToDate() const { return m_study && m_shown == m_snapshot.project && !m_changed; }
  bool isWorking() const { return m_thread.isBusy(); }
  /// Gives up the comparison under way.
  void cancel();
  /// Asks for the chosen family's reducer as a variant.
  void adopt();
  const FamilyTableModel& table() const { return *m_model; }
  const LineChartCanvas& map() const { return *m_map; }
  /// Compares in place of this stage of the transmission; -1 = of the one of the largest ratio.
  void setStage(int stage);
  CatalogueChoice& rules() { return *m_rules; }
  CatalogueChoice& reducers() { return *m_reducers; }

 protected:
  void drawCursor() override {}
  void restyle() override;
  void zoomBy(double factor) override { m_map->zoomBy(factor); }
  void resetZoom() override { m_map->resetZoom(); }
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* makeHeader();
  QWidget* makeStateRow();
  QWidget* makePages();
  QWidget* makeMapPage();
  QComboBox* makePropertyChoice(const char* name, const QString& accessibleName,
                                const std::string& chosen);
  void setUpTable();
  void compareIfNeeded();
  void compare();
  FamilyQuestion question() const;
  void showStages();
  bool byRules() const { return m_source->currentIndex() == 0; }
  void sourceChanged();
  void receive(const std::shared_ptr<FamilyStudy>& study);
  void showStudy();
  void showState();
  void showTerms();
  void showRowHeights();
  int chosenChoice() const;

  Snapshot m_snapshot;
  std::shared_ptr<const Project> m_shown;  ///< that m_study is of
  std::shared_ptr<FamilyStudy> m_study;
  std::map<std::string, double> m_weights;
  int m_stage = -1;          ///< index into the transmission; -1 = of the largest ratio
  bool m_changed = false;    ///< stage, source or rules since m_study
  bool m_cancelled = false;  ///< until the next change
  std::array<QToolButton*, 2> m_choice{};
  QComboBox* m_stages = nullptr;
  QComboBox* m_source = nullptr;
  CatalogueChoice* m_rules = nullptr;
  CatalogueChoice* m_reducers = nullptr;
  QProgressBar* m_progress = nullptr;
  QPushButton* m_cancel = nullptr;
  QPushButton* m_adopt = nullptr;
  QToolButton* m_weigh = nullptr;
  QLabel* m_state = nullptr;
  QLabel* m_terms = nullptr;
  QComboBox* m_x = nullptr;
  QComboBox* m_y = nullptr;
  QTableView* m_table;
  FamilyTableModel* m_model;
  LineChartCanvas* m_map;
  QStackedWidget* m_pages = nullptr;
  StudyThread m_thread;  // last: ends first
};

}  // namespace jw
