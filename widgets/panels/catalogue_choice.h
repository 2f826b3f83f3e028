#pragma once

#include <QComboBox>
#include <QToolButton>
#include <QWidget>

#include "widgets/panels/catalogue_files.h"

namespace jw {

/// Chooses the catalogue of one kind: the bundled one, said to be invented, or a file of one's own,
/// which later runs offer again; and opens it as a table.
class CatalogueChoice : public QWidget {
  Q_OBJECT

 public:
  /// Object names begin with `name`.
  CatalogueChoice(CatalogueKind kind, const QString& name, QWidget* parent = nullptr);

  const CataloguePtr& catalogue() const { return m_entries[std::size_t(m_current)].catalogue; }
  void add(CataloguePtr catalogue);  ///< as one more choice, chosen
  /// Reads a file and chooses it; an error changes nothing.
  tl::expected<void, InputError> open(const QString& fileName);
  /// Opens the table; what is taken over there is chosen here.
  void edit();

 protected:
  void showEvent(QShowEvent* event) override;

 signals:
  void catalogueChanged();
  void refused(const QString& message);  ///< a file that could not be read; empty = one could

 private:
  /// A catalogue that was read, or a file that is read once it is chosen.
  struct Entry {
    CataloguePtr catalogue;
    QString file;  ///< empty for the bundled one and tables taken over unsaved
  };

  void fill();
  void addRemembered();
  void choose(int index);
  void read(const Entry& entry);
  void put(Entry entry);
  void askFile();

  CatalogueKind m_kind;
  std::vector<Entry> m_entries;
  int m_current = 0;
  QComboBox* m_choice;
};

}  // namespace jw
