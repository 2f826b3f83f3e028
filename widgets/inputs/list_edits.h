#pragma once

#include <utility>
#include <vector>

#include "widgets/edit.h"

namespace jw {

/// Edits that change a list inside the project: whole items move, and with them the text that was
/// typed into them. Each is an undo step of its own.
template <class Item>
class ListEdits {
 public:
  using Items = std::vector<Item>;
  using Find = Items& (*)(Project& project);

  ListEdits(Find find, QString item) : find_(find), item_(std::move(item)) {}

  Edit append(Item added, const QString& description) const {
    return {description, {}, [find = find_, added](Project& project) -> Result {
              find(project).push_back(added);
              return {};
            }};
  }

  Edit duplicate(int index) const {
    return at("Duplicate", index, [](Items& items, auto place) {
      Item copy = *place;  // inserting moves what `place` points to
      items.insert(std::next(place), std::move(copy));
    });
  }

  Edit remove(int index) const {
    return at("Remove", index, [](Items& items, auto place) { items.erase(place); });
  }

  /// Exchanges neighbours; `to` is index ± 1.
  Edit move(int index, int to) const {
    return at("Move", index, [index, to](Items& items, auto place) {
      const bool valid = to >= 0 && to < static_cast<int>(items.size());
      if (valid) std::iter_swap(place, place + (to - index));
    });
  }

 private:
  using Result = tl::expected<void, InputError>;

  template <class Change>
  Edit at(const char* verb, int index, Change change) const {
    const QString description = QString("%1 %2 %3").arg(verb, item_).arg(index + 1);
    return {description,
            {},
            [find = find_, item = item_.toStdString(), index, change](Project& project) -> Result {
              Items& items = find(project);
              if (index < 0 || index >= static_cast<int>(items.size())) {
                return tl::unexpected(
                    InputError{"there is no " + item + " " + std::to_string(index + 1), "",
                               "there are " + std::to_string(items.size())});
              }
              change(items, items.begin() + index);
              return {};
            }};
  }

  Find find_;
  QString item_;
};

}  // namespace jw
