#include "core/model/band.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/quantity/unit_text.h"

namespace jw {
namespace {

constexpr std::array<std::string_view, 3> kShapeNames{"uniform", "normal", "triangular"};
constexpr std::string_view kSigns[] = {"\u00b1", "+/-", "+-"};

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

/// Takes a sign in front and a shape behind off the text.
std::string_view takeShape(std::string_view text, BandShape& shape) {
  for (const std::string_view sign : kSigns) {
    if (text.starts_with(sign)) {
      text = trimmed(text.substr(sign.size()));
      break;
    }
  }
  for (std::size_t k = 0; k < kShapeNames.size(); ++k) {
    if (!text.ends_with(kShapeNames[k])) continue;
    shape = static_cast<BandShape>(k);
    return trimmed(text.substr(0, text.size() - kShapeNames[k].size()));
  }
  return text;
}

InputError refusal(std::string what) { return {std::move(what), "", kBandExample}; }

tl::expected<Band, InputError> readShare(std::string_view text, Band band) {
  const auto share = parseQuantity(text, Quantity::Fraction, "%");
  if (!share) return tl::unexpected(refusal(share.error().what));
  band.half = share->value;
  band.relative = true;
  if (band.half >= 1) return tl::unexpected(refusal("a band of the whole value or more"));
  return band;
}

/// A difference of temperatures is in K or °C, but never a point on the scale.
Quantity widthQuantity(const FieldInfo& info) {
  const bool point = info.quantity == Quantity::Temperature;
  return point ? Quantity::TemperatureDifference : info.quantity;
}

tl::expected<Band, InputError> readWidth(const FieldInfo& info, std::string_view text, Band band) {
  const bool point = info.quantity == Quantity::Temperature;
  if (point && (text.ends_with("\u00b0C") || text.ends_with("degC"))) {
    text = text.substr(0, text.size() - (text.ends_with("degC") ? 4 : 3));
  }
  const auto width = parseQuantity(text, widthQuantity(info), point ? "K" : info.unit);
  if (!width) return tl::unexpected(refusal(width.error().what));
  band.half = width->value;
  return band;
}

tl::expected<Band, InputError> readExtent(const FieldInfo& info, std::string_view text,
                                          const Band& band) {
  if (text.empty()) return tl::unexpected(refusal("the width of the band is missing"));
  auto read = text.ends_with('%') ? readShare(text, band) : readWidth(info, text, band);
  if (read && read->half < 0) return tl::unexpected(refusal("a width below nothing"));
  return read;
}

/// The word after a width that would be right alone, if it is neither a shape nor a unit.
std::string_view unknownShape(const FieldInfo& info, std::string_view text) {
  const auto blank = text.find_last_of(" \t\r\n%");
  if (blank == text.npos) return {};
  const std::string_view word = text.substr(blank + 1);
  if (word.size() < 3 || detail::readUnitText(word)) return {};
  const bool rest = readExtent(info, trimmed(text.substr(0, blank + 1)), {}).has_value();
  return rest ? word : std::string_view();
}

}  // namespace

double Band::halfWidth(double value) const { return relative ? half * std::abs(value) : half; }

double Band::standardDeviation(double value) const {
  const double a = halfWidth(value);
  switch (shape) {
    case BandShape::Uniform: return a / std::numbers::sqrt3;
    case BandShape::Normal: return a / 2;
    case BandShape::Triangular: return a / std::sqrt(6.0);
  }
  throw std::logic_error("unknown shape of a band");
}

std::string_view bandShapeName(BandShape shape) {
  return kShapeNames[static_cast<std::size_t>(shape)];
}

tl::expected<Band, InputError> readBand(const FieldInfo& info, std::string_view text) {
  if (info.kind != FieldKind::Number) {
    return tl::unexpected(InputError{"only a number with a unit can have a band", "",
                                     "leave the band of this field empty"});
  }
  Band band;
  const std::string_view width = takeShape(trimmed(text), band.shape);
  auto read = readExtent(info, width, band);
  if (read) return read;
  if (const std::string_view word = unknownShape(info, width); !word.empty()) {
    return tl::unexpected(InputError{fmt::format("there is no shape of a band '{}'", word), "",
                                     fmt::format("write {}, {} or {}; uniform if none is named",
                                                 kShapeNames[0], kShapeNames[1], kShapeNames[2])});
  }
  return read;
}

tl::expected<void, InputError> setBand(Project& project, std::string_view path,
                                       std::string_view text) {
  const auto field = findField(project, path);
  if (!field) return tl::unexpected(field.error());
  // The reference was found in a project that the caller may change.
  auto& bands = const_cast<AsWritten&>(field->structInfo->asWritten(field->owner)).bands;
  if (trimmed(text).empty()) {
    bands.erase(std::string(field->info->key));
    return {};
  }
  auto band = readBand(*field->info, text);
  if (!band) {
    band.error().where = field->path;
    return tl::unexpected(band.error());
  }
  bands[std::string(field->info->key)] = std::string(trimmed(text));
  return {};
}

std::string bandText(const FieldRef& field) {
  const auto& bands = field.structInfo->asWritten(field.owner).bands;
  const auto found = bands.find(std::string(field.info->key));
  return found == bands.end() ? std::string() : found->second;
}

std::vector<BandedField> bandedFields(const Project& project) {
  std::vector<BandedField> banded;
  for (FieldRef& field : allFields(project)) {
    const std::string text = bandText(field);
    if (text.empty() || !isSet(field.number())) continue;
    const auto band = readBand(*field.info, text);
    if (band && band->halfWidth(field.number()) > 0) banded.push_back({std::move(field), *band});
  }
  return banded;
}

}  // namespace jw
