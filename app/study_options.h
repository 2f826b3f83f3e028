#pragma once

#include <CLI/CLI.hpp>

#include "app/study_commands.h"
#include "app/whole_number.h"

namespace jw {

/// The options that every command on a project has.
void addFile(CLI::App& command, ProjectRequest& request);
void addSet(CLI::App& command, ProjectRequest& request);

/// An option that takes a whole number from `low` to `high` and names itself in refusing others.
template <class Number>
void addWhole(CLI::App& command, const std::string& option, Number& value, long long low,
              long long high, const std::string& help) {
  const auto read = [=, &value](const std::string& text) {
    const auto number = readWholeNumber(text, low, high);
    if (!number) throw CLI::ValidationError(option, describe(number.error()));
    value = static_cast<Number>(*number);
  };
  command.add_option_function<std::string>(option, read, help)->type_name("N");
}

/// What the commands of the studies are asked for.
struct StudyRequests {
  SweepRequest sweep;
  ToleranceCommand tolerance;
  SearchCommand search;
  RemediesCommand remedies;
};

/// Declares sweep, tolerance, search and remedies.
void addStudies(CLI::App& app, StudyRequests& requests);

}  // namespace jw
