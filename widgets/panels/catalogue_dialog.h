#pragma once

#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QToolButton>

#include "widgets/panels/catalogue_files.h"
#include "widgets/panels/catalogue_table_model.h"

namespace jw {

/// A catalogue as a table: rows can be added, copied and removed, cells typed with units, files
/// imported and saved. The bundled one cannot be changed until it is copied.
class CatalogueDialog : public QDialog {
  Q_OBJECT

 public:
  explicit CatalogueDialog(CataloguePtr catalogue, QWidget* parent = nullptr);

  CatalogueTableModel& model() { return *m_model; }
  /// Puts a file's rows in place of these; an error changes nothing.
  tl::expected<void, InputError> importFile(const QString& fileName);
  tl::expected<void, InputError> saveFile(const QString& fileName);
  /// Makes a bundled catalogue one's own.
  void copyToEdit();
  /// Takes the table over, if all of it is right.
  void use();
  void reject() override;

 signals:
  void catalogueTaken(std::shared_ptr<const jw::Catalogue> catalogue);

 private:
  QTableView* makeTable();
  QLayout* makeTools();
  QLayout* makeButtons();
  QPushButton* makeButton(const QString& text, const char* name);
  void offerColumns();
  void addOwnColumn();
  void askImport();
  void askSave();
  void showState();
  void say(const QString& message, bool wrong);
  std::vector<int> chosenRows() const;

  CataloguePtr m_catalogue;
  QString m_name;
  CatalogueTableModel* m_model;
  QLabel* m_remark;
  QLabel* m_message;
  QTableView* m_table;
  QPushButton* m_copy = nullptr;
  QPushButton* m_undo = nullptr;
  QPushButton* m_redo = nullptr;
  QPushButton* m_use = nullptr;
  std::vector<QPushButton*> m_changers;
};

}  // namespace jw
