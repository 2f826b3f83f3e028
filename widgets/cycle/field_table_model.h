#pragma once

#include <memory>
#include <optional>

#include <QAbstractTableModel>

#include "core/model/field_catalogue.h"
#include "widgets/edit.h"

namespace jw {

/// A table whose cells are fields of a project. It shows and asks for edits; it changes nothing.
class FieldTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  using QAbstractTableModel::QAbstractTableModel;

  /// The field of a cell; none where the row has no use for it.
  virtual std::optional<FieldRef> fieldAt(const QModelIndex& index) const = 0;
  /// A cell that flips between two values: the edit that does so.
  virtual std::optional<Edit> flip(const QModelIndex&) const { return std::nullopt; }

  /// "82°", "0.95 s", a choice's label, or "needed".
  static QString cellText(const FieldRef& field);
  /// Whether a cell without which nothing can be computed is empty.
  static bool isMissing(const FieldRef& field);

 signals:
  void editRequested(const jw::Edit& edit);
  /// An entry was given up as it could not be read, or (empty) is right again.
  void entryRefused(const QString& message);
};

/// Whether the field matters with its owner's other values.
bool appliesNow(const FieldRef& field);

/// Path and place of one field of a struct inside a project.
template <class T>
FieldRef fieldOf(const T& owner, const std::string& path, std::string_view key) {
  const StructInfo& info = structInfo<T>();
  return {path + "." + std::string(key), info.find(key), &info, &owner};
}

}  // namespace jw
