#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <QWidget>

#include "widgets/figures/search_filters.h"
#include "widgets/figures/search_study.h"
#include "widgets/panels/catalogue_choice.h"

namespace jw {

/// What is to be searched: catalogues, the stage that reducers go to, a belt with its ratios, and
/// filters.
class SearchSettings : public QWidget {
  Q_OBJECT

 public:
  explicit SearchSettings(QWidget* parent = nullptr);

  /// Offers the stages of the project's chain.
  void showProject(const Project& project);
  /// The question as it is set; an error names what is wrong with it.
  tl::expected<SearchQuestion, InputError> question(std::shared_ptr<const Project> project) const;
  CatalogueChoice& motors() { return *m_motors; }
  CatalogueChoice& reducers() { return *m_reducers; }

 signals:
  void changed();
  void refused(const QString& message);

 private:
  QComboBox* makeStageChoice(const char* name, const QString& accessibleName);
  void fillStages(const Project& project);
  tl::expected<void, InputError> addBelt(SearchSpace& space) const;

  CatalogueChoice* m_motors;
  CatalogueChoice* m_reducers;
  QComboBox* m_stage;
  QComboBox* m_belt;
  QLineEdit* m_ratios;
  SearchFilters* m_filters;
  QStringList m_stageNames;
};

}  // namespace jw
