#pragma once

#include <QStyledItemDelegate>

namespace jw {

/// Edits the cells of a FieldTableModel with the same editors as the forms: what is typed is read
/// with its unit, told in place if it is wrong, and takes effect at once.
class FieldCellDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  /// Nothing: the editor has asked for its edits already.
  void setModelData(QWidget*, QAbstractItemModel*, const QModelIndex&) const override {}
  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const override;

 signals:
  void refused(const QString& message);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

 private:
  void connectChoice(QWidget* editor) const;
  void closeSoon(QWidget* editor);
  void goBack(QWidget* editor);
};

}  // namespace jw
