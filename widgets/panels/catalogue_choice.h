#pragma once

#include <QComboBox>
#include <QToolButton>
#include <QWidget>

#include "widgets/panels/catalogue_files.h"

namespace jw {

/// Chooses the catalogue of one kind: the bundled one, said to be invented, or a file of one's own;
/// and opens it as a table.
class CatalogueChoice : public QWidget {
  Q_OBJECT

 public:
  /// Object names begin with `name`.
  CatalogueChoice(CatalogueKind kind, const QString& name, QWidget* parent = nullptr);

  const CataloguePtr& catalogue() const { return m_catalogues[std::size_t(m_current)]; }
  void add(CataloguePtr catalogue);  ///< as one more choice, chosen
  /// Reads a file and chooses it; an error changes nothing.
  tl::expected<void, InputError> open(const QString& fileName);
  /// Opens the table; what is taken over there is chosen here.
  void edit();

 signals:
  void catalogueChanged();
  void refused(const QString& message);  ///< a file that could not be read; empty = one could

 private:
  void fill();
  void choose(int index);
  void askFile();

  CatalogueKind m_kind;
  std::vector<CataloguePtr> m_catalogues;
  int m_current = 0;
  QComboBox* m_choice;
};

}  // namespace jw
