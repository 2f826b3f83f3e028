#pragma once

#include <span>
#include <string_view>

#include "core/quantity/quantity.h"

namespace jw::detail {

struct QuantityRow {
  QuantityInfo info;
  std::string_view example;           ///< what a person might type, for remedies
  std::string_view alternative = {};  ///< a unit of another dimension also taken; may be empty
};

/// One row per enumerator, in their order.
std::span<const QuantityRow> quantityRows();

const QuantityRow& quantityRow(Quantity quantity);

}  // namespace jw::detail
