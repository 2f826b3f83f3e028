// Fields of a project by path: listing, finding.
#include <algorithm>
#include <numeric>

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

InputError unknownField(std::string_view path, const std::vector<Node>& nodes) {
  const std::string shown(path.substr(0, 80));
  if (path.size() > 80) return {"no such field", shown, "see 'jointwright fields' for all of them"};
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
