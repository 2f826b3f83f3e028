#include "core/robot/description_check.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include <fast_float/fast_float.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <tinyxml.h>

namespace jw {
namespace {

constexpr std::size_t kMostLinks = 1000;

using MaybeError = std::optional<InputError>;

std::size_t lineOf(const TiXmlElement& element) { return static_cast<std::size_t>(element.Row()); }

std::string attribute(const TiXmlElement& element, const char* name) {
  const char* value = element.Attribute(name);
  return value == nullptr ? std::string() : std::string(value);
}

/// The parser goes one call deeper for each element within another.
bool nestsTooDeep(std::string_view text) {
  constexpr int kDeepest = 100;
  int depth = 0;
  for (std::size_t at = text.find('<'); at != text.npos; at = text.find('<', at + 1)) {
    if (text.substr(at, 4) == "<!--") at = std::min(text.find("-->", at), text.size());
    const char next = at + 1 < text.size() ? text[at + 1] : '!';
    if (next == '!' || next == '?' || next == '-') continue;
    const std::size_t end = text.find('>', at);
    if (next == '/') {
      --depth;
    } else if (end == text.npos || text[end - 1] != '/') {
      ++depth;
    }
    if (depth > kDeepest) return true;
  }
  return false;
}

/// Whether `text` is `count` numbers parted by blanks.
bool isNumbers(std::string_view text, int count) {
  const auto skipBlanks = [&text] {
    text.remove_prefix(std::min(text.find_first_not_of(" \t\r\n"), text.size()));
  };
  for (skipBlanks(); !text.empty(); skipBlanks()) {
    double value = 0;
    if (text.front() == '+') text.remove_prefix(1);
    const auto read = fast_float::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec != std::errc() || !std::isfinite(value)) return false;
    text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
    --count;
  }
  return count == 0;
}

/// A part of <inertial> that has to be given, and by how many numbers.
struct InertialPart {
  const char* element;
  const char* attribute;
  int numbers = 1;
  bool needed = true;
};

constexpr InertialPart kInertialParts[] = {
    {"mass", "value"},  {"inertia", "ixx"},          {"inertia", "ixy"},
    {"inertia", "ixz"}, {"inertia", "iyy"},          {"inertia", "iyz"},
    {"inertia", "izz"}, {"origin", "xyz", 3, false}, {"origin", "rpy", 3, false}};

/// Goes through the elements below <robot>.
class Checker {
 public:
  Checker(const TiXmlElement& robot, std::string fileName, DescriptionLines& lines)
      : robot_(robot), file_(std::move(fileName)), lines_(lines) {}

  MaybeError check() {
    if (auto error = collect("link", lines_.links)) return error;
    if (auto error = collect("joint", lines_.joints)) return error;
    if (lines_.links.empty()) {
      return InputError{"there is no link", file_, "a robot needs at least one <link>"};
    }
    if (lines_.links.size() > kMostLinks) {
      return InputError{fmt::format("there are {} links", lines_.links.size()), file_,
                        fmt::format("at most {} are read", kMostLinks)};
    }
    for (const auto* link = robot_.FirstChildElement("link"); link != nullptr;
         link = link->NextSiblingElement("link")) {
      if (auto error = checkInertial(*link)) return error;
    }
    for (const auto* joint = robot_.FirstChildElement("joint"); joint != nullptr;
         joint = joint->NextSiblingElement("joint")) {
      if (auto error = checkEnds(*joint)) return error;
      if (auto error = checkAxis(*joint)) return error;
    }
    return checkLimits();
  }

 private:
  InputError at(const TiXmlElement& element, std::string what, std::string remedy) const {
    return {std::move(what), fmt::format("{}, line {}", file_, lineOf(element)), std::move(remedy)};
  }

  MaybeError collect(const char* kind, std::map<std::string, std::size_t>& into) const {
    for (const auto* one = robot_.FirstChildElement(kind); one != nullptr;
         one = one->NextSiblingElement(kind)) {
      const std::string name = attribute(*one, "name");
      if (name.empty()) {
        return at(*one, fmt::format("this {} has no name", kind), "give it a name=\"…\"");
      }
      if (const auto [place, fresh] = into.emplace(name, lineOf(*one)); !fresh) {
        return at(
            *one,
            fmt::format("the {} '{}' comes twice, first in line {}", kind, name, place->second),
            "rename one of them");
      }
    }
    return std::nullopt;
  }

  MaybeError checkInertial(const TiXmlElement& link) const {
    const TiXmlElement* inertial = link.FirstChildElement("inertial");
    if (inertial == nullptr) return std::nullopt;
    for (const InertialPart& part : kInertialParts) {
      const TiXmlElement* element = inertial->FirstChildElement(part.element);
      const char* value = element == nullptr ? nullptr : element->Attribute(part.attribute);
      if (value == nullptr && !part.needed) continue;
      if (value != nullptr && isNumbers(value, part.numbers)) continue;
      const std::string name = attribute(link, "name");
      const std::string found = value == nullptr
                                    ? "is missing"
                                    : fmt::format("is '{}'", std::string(value).substr(0, 40));
      return at(element == nullptr ? *inertial : *element,
                fmt::format("{} in the <{}> of the link '{}' {}", part.attribute, part.element,
                            name, found),
                part.numbers == 1 ? "give a number" : "give three numbers");
    }
    return std::nullopt;
  }

  MaybeError checkEnds(const TiXmlElement& joint) const {
    const std::string name = attribute(joint, "name");
    for (const char* end : {"parent", "child"}) {
      const TiXmlElement* element = joint.FirstChildElement(end);
      if (element == nullptr) {
        return at(joint, fmt::format("the joint '{}' names no {} link", name, end),
                  fmt::format("add <{} link=\"…\"/>", end));
      }
      const std::string link = attribute(*element, "link");
      if (lines_.links.contains(link)) continue;
      return at(*element,
                fmt::format("the {} link '{}' of the joint '{}' is not declared", end, link, name),
                fmt::format("add <link name=\"{}\"/>, or correct the name", link));
    }
    return std::nullopt;
  }

  MaybeError checkAxis(const TiXmlElement& joint) const {
    const TiXmlElement* axis = joint.FirstChildElement("axis");
    const std::string type = attribute(joint, "type");
    if (axis == nullptr || type == "fixed" || type == "floating") return std::nullopt;
    const std::string xyz = attribute(*axis, "xyz");
    const bool hasLength = xyz.find_first_of("123456789nNiI") != std::string::npos;
    if (hasLength || xyz.empty()) return std::nullopt;
    return at(*axis,
              fmt::format("the axis of the joint '{}' has no length", attribute(joint, "name")),
              "give a direction, such as xyz=\"0 0 1\"");
  }

  /// All joints at once: a description that lacks one mostly lacks them all.
  MaybeError checkLimits() const {
    std::vector<std::string> lacking;
    const TiXmlElement* first = nullptr;
    for (const auto* joint = robot_.FirstChildElement("joint"); joint != nullptr;
         joint = joint->NextSiblingElement("joint")) {
      const std::string type = attribute(*joint, "type");
      if (type != "revolute" && type != "prismatic") continue;
      const TiXmlElement* limit = joint->FirstChildElement("limit");
      std::string what = limit == nullptr ? "<limit>" : missingIn(*limit);
      if (what.empty()) continue;
      if (first == nullptr) first = joint;
      lacking.push_back(
          fmt::format("'{}' (line {}, {})", attribute(*joint, "name"), lineOf(*joint), what));
    }
    if (lacking.empty()) return std::nullopt;
    const std::string all = fmt::format("{}", fmt::join(lacking, ", "));
    return at(*first, fmt::format("limits are missing: {}", all.substr(0, 400)),
              "add <limit lower=\"…\" upper=\"…\" effort=\"…\" velocity=\"…\"/>, or make the joint "
              "\"continuous\"");
  }

  static std::string missingIn(const TiXmlElement& limit) {
    for (const char* name : {"effort", "velocity"}) {
      if (limit.Attribute(name) == nullptr) return fmt::format("{} in its <limit>", name);
    }
    return {};
  }

  const TiXmlElement& robot_;
  std::string file_;
  DescriptionLines& lines_;
};

}  // namespace

std::optional<InputError> descriptionError(const std::string& text, const std::string& fileName,
                                           DescriptionLines& lines) {
  if (nestsTooDeep(text)) {
    return InputError{"elements stand more than 100 deep in one another", fileName,
                      "open a robot description (URDF)"};
  }
  TiXmlDocument document;
  document.Parse(text.c_str());
  if (document.Error()) {
    const int row = document.ErrorRow();
    return InputError{fmt::format("this is no sound XML: {}", document.ErrorDesc()),
                      row > 0 ? fmt::format("{}, line {}", fileName, row) : fileName,
                      "open a robot description (URDF)"};
  }
  const TiXmlElement* robot = document.FirstChildElement("robot");
  if (robot == nullptr) {
    return InputError{"there is no <robot> element", fileName, "open a robot description (URDF)"};
  }
  return Checker(*robot, fileName, lines).check();
}

}  // namespace jw
