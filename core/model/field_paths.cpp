// Fields of a project by path: listing, finding.
#include <algorithm>
#include <array>
#include <numeric>
#include <optional>

#include <fmt/format.h>

#include "core/model/acceptance.h"

namespace jw {
namespace {

/// One catalogued struct inside a project.
struct Node {
  std::string path;  ///< "" for the project itself
  const StructInfo* info;
  const void* owner;
};

template <class T>
Node node(std::string path, const T& owner) {
  return {std::move(path), &structInfo<T>(), &owner};
}

void addCycle(std::vector<Node>& nodes, const std::string& path, const Cycle& cycle) {
  nodes.push_back(node(path, cycle));
  for (std::size_t k = 0; k < cycle.segments.size(); ++k) {
    nodes.push_back(node(fmt::format("{}.segments[{}]", path, k), cycle.segments[k]));
  }
}

std::vector<Node> nodesOf(const Project& project) {
  const Variant& variant = project.active();
  std::vector<Node> nodes{node("", project), node("variant", variant),
                          node("supply", variant.supply), node("controller", variant.controller),
                          node("motor", variant.motor)};
  for (std::size_t k = 0; k < variant.transmission.size(); ++k) {
    nodes.push_back(node(fmt::format("transmission[{}]", k), variant.transmission[k]));
  }
  for (std::size_t k = 0; k < variant.accepted.size(); ++k) {
    nodes.push_back(node(fmt::format("accepted[{}]", k), variant.accepted[k]));
  }
  nodes.push_back(node("load", project.load));
  for (std::size_t k = 0; k < project.load.masses.size(); ++k) {
    nodes.push_back(node(fmt::format("load.masses[{}]", k), project.load.masses[k]));
  }
  addCycle(nodes, "cycle", project.cycle);
  for (std::size_t k = 0; k < project.otherCycles.size(); ++k) {
    addCycle(nodes, fmt::format("otherCycles[{}]", k), project.otherCycles[k]);
  }
  nodes.push_back(node("requirements", project.requirements));
  return nodes;
}

FieldRef fieldOf(const Node& node, const FieldInfo& info) {
  std::string path =
      node.path.empty() ? std::string(info.key) : fmt::format("{}.{}", node.path, info.key);
  return {std::move(path), &info, node.info, node.owner};
}

/// Levenshtein distance, for suggestions.
std::size_t editDistance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] != b[j - 1] ? 1 : 0);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
    }
  }
  return row.back();
}

std::string nearest(std::string_view wanted, const std::vector<std::string>& known) {
  const auto best = std::min_element(known.begin(), known.end(), [&](const auto& a, const auto& b) {
    return editDistance(wanted, a) < editDistance(wanted, b);
  });
  return best == known.end() ? std::string() : *best;
}

/// What one entry of a list is called; all lists of moves have one name.
struct ListName {
  std::string_view list, one, many;
};

constexpr std::array kListNames{ListName{"transmission", "stage", "stages"},
                                ListName{"accepted", "accepted verdict", "accepted verdicts"},
                                ListName{"load.masses", "mass", "masses"},
                                ListName{"cycle.segments", "move", "moves"},
                                ListName{"otherCycles", "other cycle", "other cycles"}};

/// "there are 2 stages, counted from 0"; `rest` is what the path has behind the number.
InputError beyondList(std::string_view list, std::string_view rest, const ListName& name,
                      std::size_t count) {
  if (count == 0) return {fmt::format("there is no {}", name.one), "", "add one first"};
  return {fmt::format("there {} {}, counted from 0",
                      count == 1 ? "is one" : fmt::format("are {}", count),
                      count == 1 ? name.one : name.many),
          "",
          count == 1 ? fmt::format("write {}[0]{}", list, rest)
                     : fmt::format("write {0}[0]{1} to {0}[{2}]{1}", list, rest, count - 1)};
}

/// For a path whose first number in brackets that is not there is beyond the end of its list.
std::optional<InputError> beyondEnd(std::string_view path, const std::vector<Node>& nodes) {
  const auto has = [&](std::string_view wanted) {
    return std::any_of(nodes.begin(), nodes.end(), [&](const Node& n) { return n.path == wanted; });
  };
  for (auto open = path.find('['); open != path.npos; open = path.find('[', open + 1)) {
    const auto close = path.find(']', open);
    const std::string_view digits = path.substr(open + 1, close - open - 1);
    if (close == path.npos || digits.empty() ||
        digits.find_first_not_of("0123456789") != digits.npos) {
      return std::nullopt;
    }
    if (has(path.substr(0, close + 1))) continue;
    const std::string_view list = path.substr(0, open);
    std::size_t count = 0;
    while (has(fmt::format("{}[{}]", list, count))) ++count;
    const bool moves = list.starts_with("otherCycles[") && list.ends_with("].segments");
    for (const ListName& name : kListNames) {
      if (name.list != (moves ? "cycle.segments" : list)) continue;
      return beyondList(list, path.substr(close + 1), name, count);
    }
    return std::nullopt;
  }
  return std::nullopt;
}

InputError unknownField(std::string_view path, const std::vector<Node>& nodes) {
  const std::string shown(path.substr(0, 80));
  if (path.size() > 80) return {"no such field", shown, "see 'jointwright fields' for all of them"};
  if (auto beyond = beyondEnd(path, nodes)) {
    beyond->where = shown;
    return *beyond;
  }
  std::vector<std::string> known;
  for (const Node& n : nodes) {
    for (const FieldInfo& info : n.info->fields) known.push_back(fieldOf(n, info).path);
  }
  return {"no such field in this project", shown,
          fmt::format("nearest is '{}'; 'jointwright fields' lists all", nearest(path, known))};
}

}  // namespace

const FieldInfo* StructInfo::find(std::string_view fieldKey) const {
  const auto found = std::find_if(fields.begin(), fields.end(),
                                  [&](const FieldInfo& f) { return f.key == fieldKey; });
  return found == fields.end() ? nullptr : &*found;
}

tl::expected<FieldRef, InputError> findField(const Project& project, std::string_view path) {
  const std::vector<Node> nodes = nodesOf(project);
  const std::size_t dot = path.rfind('.');
  const std::string_view parent = dot == path.npos ? std::string_view() : path.substr(0, dot);
  const std::string_view key = dot == path.npos ? path : path.substr(dot + 1);
  for (const Node& n : nodes) {
    if (n.path != parent) continue;
    if (const FieldInfo* info = n.info->find(key)) return fieldOf(n, *info);
  }
  return tl::unexpected(unknownField(path, nodes));
}

std::vector<FieldRef> allFields(const Project& project) {
  std::vector<FieldRef> fields;
  for (const Node& n : nodesOf(project)) {
    for (const FieldInfo& info : n.info->fields) fields.push_back(fieldOf(n, info));
  }
  return fields;
}

}  // namespace jw
