#include "widgets/cycle/mix_edits.h"

#include <utility>

#include <fmt/format.h>

namespace jw::mix {
namespace {

using Result = tl::expected<void, InputError>;

Result refuse(std::string what, std::string remedy) {
  return tl::unexpected(InputError{std::move(what), "otherCycles", std::move(remedy)});
}

}  // namespace

int rows(const Project& project) { return 1 + static_cast<int>(project.otherCycles.size()); }

const Cycle& cycleAt(const Project& project, int row) {
  return row == 0 ? project.cycle : project.otherCycles[static_cast<std::size_t>(row - 1)];
}

std::string pathAt(int row) { return row == 0 ? "cycle" : fmt::format("otherCycles[{}]", row - 1); }

Edit addCopy() {
  return {QStringLiteral("Add a cycle to the day"), {}, [](Project& project) -> Result {
            Cycle copy = project.cycle;
            copy.name = copy.name.empty() ? std::string() : copy.name + " (copy)";
            project.otherCycles.push_back(std::move(copy));
            return {};
          }};
}

Edit remove(int row) {
  return {QString("Delete cycle %1").arg(row + 1), {}, [row](Project& project) -> Result {
            auto& others = project.otherCycles;
            if (others.empty()) return refuse("this is the only cycle", "add another one first");
            if (row < 0 || row >= rows(project)) return refuse("there is no such cycle", "");
            if (row == 0) project.cycle = others.front();
            others.erase(others.begin() + (row == 0 ? 0 : row - 1));
            return {};
          }};
}

Edit show(int row) {
  return {QString("Show cycle %1").arg(row + 1), {}, [row](Project& project) -> Result {
            if (row < 0 || row >= rows(project)) return refuse("there is no such cycle", "");
            if (row > 0)
              std::swap(project.cycle, project.otherCycles[static_cast<std::size_t>(row - 1)]);
            return {};
          }};
}

}  // namespace jw::mix
