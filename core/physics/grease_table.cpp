#include "core/physics/grease_table.h"

namespace jw {

tl::expected<GreaseTable, InputError> readGreaseTable(std::string_view text) {
  static const PointTableKind kKind{{"temperature", Quantity::Temperature, "degC"},
                                    {"factor", Quantity::Number, "1", 0, 1000},
                                    "-20 degC 2.4; 20 degC 1"};
  return readPointTable(text, kKind).map([](PointTable&& points) {
    return GreaseTable{std::move(points)};
  });
}

}  // namespace jw
