// Text -> project.
#include <algorithm>

#include <fmt/format.h>

#include "core/files/migration.h"
#include "core/files/project_keys.h"
#include "core/files/project_text.h"
#include "core/files/struct_reader.h"
#include "core/model/acceptance.h"

namespace jw {
namespace {

void readColumn(StructReader& in, const Json& table, const keys::TableColumn& column,
                MotionTable& out, const std::string& path) {
  const Json* list = in.childList(table, column.key, path, kMostTablePoints);
  if (list == nullptr) {
    if (column.required) in.fail("this list is missing", childPath(path, column.key), "add it");
    return;
  }
  std::vector<double>& values = (out.*column.values).own();
  values.reserve(list->size());
  for (std::size_t k = 0; k < list->size() && !in.failed(); ++k) {
    if ((*list)[k].is_number()) {
      values.push_back((*list)[k].get<double>());
    } else {
      in.fail("found " + quoteValue((*list)[k]), elementPath(childPath(path, column.key), k),
              "a bare number is needed here");
    }
  }
}

/// Lists of one length, with time rising from 0.
void checkTable(StructReader& in, const MotionTable& table, const std::string& path) {
  for (const keys::TableColumn& column : keys::kTableColumns) {
    const std::size_t size = (table.*column.values).size();
    if (size != table.time.size() && (column.required || size != 0)) {
      in.fail(fmt::format("{} points, but {} times", size, table.time.size()),
              childPath(path, column.key), "give one for each time");
    }
  }
  const std::string timePath = childPath(path, keys::kTableColumns[0].key);
  if (!table.time.empty() && table.time.front() != 0) {
    in.fail(fmt::format("the first time is {} s", table.time.front()), timePath, "start at 0");
  }
  for (std::size_t k = 1; k < table.time.size() && !in.failed(); ++k) {
    if (!(table.time[k] > table.time[k - 1])) {
      in.fail(fmt::format("{} s follows {} s", table.time[k], table.time[k - 1]),
              elementPath(timePath, k), "times have to rise");
    }
  }
}

void readTable(StructReader& in, const Json& object, MotionTable& table, const std::string& path) {
  for (const auto& [key, value] : object.items()) {
    const auto known = [&key = key](const keys::TableColumn& c) { return c.key == key; };
    if (std::none_of(keys::kTableColumns.begin(), keys::kTableColumns.end(), known)) {
      in.fail(
          "this list is not known", childPath(path, key),
          R"(a table has "time [s]", "angle [rad]", "speed [rad/s]", "acceleration [rad/s^2]", )"
          R"("external torque [N*m]")");
    }
  }
  for (const keys::TableColumn& column : keys::kTableColumns) {
    if (!in.failed()) readColumn(in, object, column, table, path);
  }
  if (!in.failed()) checkTable(in, table, path);
}

void readSegment(StructReader& in, const Json& object, Segment& segment, const std::string& path) {
  if (!in.needObject(object, path)) return;
  in.readFields(object, segment, path, {keys::kTable});
  if (const Json* table = in.childObject(object, keys::kTable, path)) {
    readTable(in, *table, segment.table, childPath(path, keys::kTable));
  }
}

void readCycle(StructReader& in, const Json& object, Cycle& cycle, const std::string& path) {
  if (!in.needObject(object, path)) return;
  in.readFields(object, cycle, path, {keys::kSegments});
  const Json* segments = in.childList(object, keys::kSegments, path, kMostSegments);
  for (std::size_t k = 0; segments != nullptr && k < segments->size() && !in.failed(); ++k) {
    readSegment(in, (*segments)[k], cycle.segments.emplace_back(),
                elementPath(childPath(path, keys::kSegments), k));
  }
}

void readOtherCycles(StructReader& in, const Json& document, Project& project) {
  const std::string path(keys::kOtherCycles);
  const Json* cycles = in.childList(document, keys::kOtherCycles, "", kMostCycles);
  for (std::size_t k = 0; cycles != nullptr && k < cycles->size() && !in.failed(); ++k) {
    readCycle(in, (*cycles)[k], project.otherCycles.emplace_back(), elementPath(path, k));
  }
}

void readLoad(StructReader& in, const Json& object, Load& load) {
  const std::string path(keys::kLoad);
  in.readFields(object, load, path, {keys::kMasses});
  const Json* masses = in.childList(object, keys::kMasses, path, kMostMasses);
  for (std::size_t k = 0; masses != nullptr && k < masses->size() && !in.failed(); ++k) {
    const std::string where = elementPath(childPath(path, keys::kMasses), k);
    LoadMass& mass = load.masses.emplace_back();
    if (in.needObject((*masses)[k], where)) in.readFields((*masses)[k], mass, where);
  }
}

template <class T>
void readChild(StructReader& in, const Json& parent, std::string_view key, T& owner,
               const std::string& path) {
  if (const Json* object = in.childObject(parent, key, path)) {
    in.readFields(*object, owner, childPath(path, key));
  }
}

void readAccepted(StructReader& in, const Json& variant, std::vector<Acceptance>& accepted,
                  const std::string& path) {
  const Json* list = in.childList(variant, keys::kAccepted, path, kMostAcceptances);
  for (std::size_t k = 0; list != nullptr && k < list->size() && !in.failed(); ++k) {
    const std::string where = elementPath(childPath(path, keys::kAccepted), k);
    Acceptance& one = accepted.emplace_back();
    if (in.needObject((*list)[k], where)) in.readFields((*list)[k], one, where);
  }
}

void readVariant(StructReader& in, const Json& object, Variant& variant, const std::string& path) {
  if (!in.needObject(object, path)) return;
  in.readFields(
      object, variant, path,
      {keys::kSupply, keys::kController, keys::kMotor, keys::kTransmission, keys::kAccepted});
  readChild(in, object, keys::kSupply, variant.supply, path);
  readChild(in, object, keys::kController, variant.controller, path);
  readChild(in, object, keys::kMotor, variant.motor, path);
  const Json* stages = in.childList(object, keys::kTransmission, path, kMostStages);
  for (std::size_t k = 0; stages != nullptr && k < stages->size() && !in.failed(); ++k) {
    const std::string where = elementPath(childPath(path, keys::kTransmission), k);
    Stage& stage = variant.transmission.emplace_back();
    if (in.needObject((*stages)[k], where)) in.readFields((*stages)[k], stage, where);
  }
  readAccepted(in, object, variant.accepted, path);
}

void readVariants(StructReader& in, const Json& document, Project& project) {
  const std::string path(keys::kVariants);
  const Json* variants = in.childList(document, keys::kVariants, "", kMostVariants);
  if (variants == nullptr || variants->empty()) {
    return in.fail("there is no variant", path, "list at least one");
  }
  project.variants.clear();
  for (std::size_t k = 0; k < variants->size() && !in.failed(); ++k) {
    readVariant(in, (*variants)[k], project.variants.emplace_back(), elementPath(path, k));
  }
}

void readActiveVariant(StructReader& in, const Json& document, Project& project) {
  const auto found = document.find(std::string(keys::kActiveVariant));
  if (in.failed() || found == document.end()) return;
  const auto last = project.variants.size() - 1;
  if (!found->is_number_unsigned() || found->get<std::size_t>() > last) {
    return in.fail("found " + quoteValue(*found), std::string(keys::kActiveVariant),
                   fmt::format("a whole number from 0 to {} is needed", last));
  }
  project.activeVariant = found->get<int>();
}

void readBody(StructReader& in, const Json& document, Project& project) {
  in.readFields(document, project, "",
                {keys::kFormat, keys::kVersion, keys::kLoad, keys::kCycle, keys::kOtherCycles,
                 keys::kRequirements, keys::kVariants, keys::kActiveVariant});
  if (const Json* load = in.childObject(document, keys::kLoad, "")) {
    readLoad(in, *load, project.load);
  }
  if (const Json* cycle = in.childObject(document, keys::kCycle, "")) {
    readCycle(in, *cycle, project.cycle, std::string(keys::kCycle));
  }
  readOtherCycles(in, document, project);
  readChild(in, document, keys::kRequirements, project.requirements, "");
  if (!in.failed()) readVariants(in, document, project);
  readActiveVariant(in, document, project);
}

/// Format name and version; the version if this program can read it.
tl::expected<int, InputError> readHead(const Json& document) {
  const std::string format(keys::kFormat);
  const auto refuse = [](std::string what, std::string_view where, std::string remedy) {
    return tl::unexpected(InputError{std::move(what), std::string(where), std::move(remedy)});
  };
  if (!document.is_object() || !document.contains(format)) {
    return refuse("this is JSON, but no Jointwright project", "",
                  R"(a project begins with {"format": "jointwright project", "version": 1)");
  }
  if (document[format] != std::string(kProjectFormat)) {
    return refuse("found " + quoteValue(document[format]), keys::kFormat,
                  fmt::format("\"{}\" is needed", kProjectFormat));
  }
  const auto version = document.find(std::string(keys::kVersion));
  if (version == document.end() || !version->is_number_unsigned() || *version == 0U) {
    return refuse(
        version == document.end() ? "the version is missing" : "found " + quoteValue(*version),
        keys::kVersion, fmt::format("a whole number from 1 to {}", kProjectVersion));
  }
  if (*version > static_cast<unsigned>(kProjectVersion)) {
    return refuse(fmt::format("this project is of format version {}, newer than this program reads",
                              version->dump()),
                  keys::kVersion,
                  fmt::format("open it with a Jointwright that reads version {}; this one reads up "
                              "to {}",
                              version->dump(), kProjectVersion));
  }
  return version->get<int>();
}

tl::expected<ReadProject, InputError> readDocument(Json document) {
  const auto version = readHead(document);
  if (!version) return tl::unexpected(version.error());
  auto notes = migrate(document, *version, kProjectVersion, projectMigrations());
  if (!notes) return tl::unexpected(notes.error());
  StructReader in;
  ReadProject result;
  readBody(in, document, result.project);
  if (in.failed()) return tl::unexpected(*in.error());
  result.notes = std::move(*notes);
  for (InputError& note : in.takeNotes()) result.notes.push_back(std::move(note));
  return result;
}

}  // namespace

tl::expected<ReadProject, InputError> readProject(std::string_view text,
                                                  std::string_view fileName) {
  auto document = parseJson(text, fileName);
  if (!document) return tl::unexpected(document.error());
  auto result = readDocument(std::move(*document));
  if (!result) {
    InputError& error = result.error();
    error.where =
        error.where.empty() ? std::string(fileName) : fmt::format("{}: {}", fileName, error.where);
  }
  return result;
}

}  // namespace jw
