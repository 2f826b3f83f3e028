#include "core/files/json_document.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace jw {
namespace {

/// Line and column (from 1, in characters) of a byte of `text`.
std::string placeOf(std::string_view text, std::size_t byte, std::string_view fileName) {
  const std::string_view before = text.substr(0, std::min(byte, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t lineStart = before.rfind('\n') + 1;  // npos + 1 is 0
  const auto column = 1 + std::count_if(before.begin() + static_cast<std::ptrdiff_t>(lineStart),
                                        before.end(), [](char c) { return (c & 0xC0) != 0x80; });
  return fmt::format("{}, line {}, column {}", fileName, line, column);
}

/// The part of the parser's message that says what is wrong, without its own prefix and place.
std::string coreOfMessage(std::string_view message) {
  if (const auto dash = message.find(" - "); dash != std::string_view::npos) {
    message.remove_prefix(dash + 3);
  } else if (const auto bracket = message.find("] "); bracket != std::string_view::npos) {
    message.remove_prefix(bracket + 2);
  }
  return std::string(message);
}

/// Builds the document from the parser's events and refuses what the parser alone would accept.
class DocumentBuilder : public nlohmann::json_sax<Json> {
 public:
  DocumentBuilder(std::string_view text, std::string_view fileName)
      : text_(text), fileName_(fileName) {}

  Json takeRoot() { return std::move(root_); }
  InputError error() const { return error_; }

  bool null() override { return add(nullptr); }
  bool boolean(bool value) override { return add(value); }
  bool number_integer(number_integer_t value) override { return add(value); }
  bool number_unsigned(number_unsigned_t value) override { return add(value); }
  bool number_float(number_float_t value, const string_t&) override { return add(value); }
  bool string(string_t& value) override { return add(std::move(value)); }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    auto& object = open_.back()->get_ref<Json::object_t&>();
    if (object.size() >= kMostKeys) {
      return fail(
          {fmt::format("more than {} keys in one object", kMostKeys), path(), "remove some"});
    }
    const auto [place, isNew] = object.emplace(name, nullptr);
    slot_ = &place->second;
    keys_.back() = name;
    return isNew || fail({"this key appears twice", path(), "keep one of the two"});
  }

  bool parse_error(std::size_t bytesRead, const std::string&,
                   const nlohmann::detail::exception& exception) override {
    return fail({"not valid JSON: " + coreOfMessage(exception.what()),
                 placeOf(text_, bytesRead > 0 ? bytesRead - 1 : 0, fileName_),
                 "correct the file in a text editor"});
  }

 private:
  bool fail(InputError error) {
    error_ = std::move(error);
    return false;
  }

  std::string path() const {
    std::string result;
    for (std::size_t i = 0; i < open_.size(); ++i) {
      const bool inside = i + 1 < open_.size();  // the last element is the one that is open
      result = open_[i]->is_array() ? elementPath(result, open_[i]->size() - (inside ? 1 : 0))
                                    : childPath(result, keys_[i]);
    }
    return fmt::format("{}: {}", fileName_, result);
  }

  bool add(Json value) { return place(std::move(value)) != nullptr; }

  Json* place(Json value) {
    if (open_.empty()) {
      root_ = std::move(value);
      return &root_;
    }
    if (open_.back()->is_array()) {
      open_.back()->push_back(std::move(value));
      return &open_.back()->back();
    }
    *slot_ = std::move(value);
    return slot_;
  }

  bool open(Json container) {
    if (open_.size() >= kDeepestNesting) {
      return fail({fmt::format("nested deeper than {} levels", kDeepestNesting), path(),
                   "a project needs no more than 8"});
    }
    open_.push_back(place(std::move(container)));
    keys_.emplace_back();
    return true;
  }

  bool close() {
    open_.pop_back();
    keys_.pop_back();
    return true;
  }

  std::string_view text_;
  std::string_view fileName_;
  Json root_;
  std::vector<Json*> open_;        // containers not closed yet, outermost first
  std::vector<std::string> keys_;  // the latest key of each
  Json* slot_ = nullptr;           // where the value of the latest key goes
  InputError error_;
};

/// What can be said about the bytes before any parsing.
std::optional<InputError> unfitBytes(std::string_view text, std::string_view fileName) {
  const std::string file(fileName);
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    return InputError{"the file is empty", file, "choose a file that holds a project"};
  }
  if (text.find('\0') != std::string_view::npos) {
    return InputError{"this is a binary file, not a project", file,
                      "choose a .jointwright file, which is text"};
  }
  return std::nullopt;
}

}  // namespace

tl::expected<Json, InputError> parseJson(std::string_view text, std::string_view fileName) {
  if (const auto unfit = unfitBytes(text, fileName)) {
    return tl::unexpected(*unfit);
  }
  DocumentBuilder builder(text, fileName);
  if (!Json::sax_parse(text, &builder)) {
    return tl::unexpected(builder.error());
  }
  return builder.takeRoot();
}

std::string childPath(std::string_view parent, std::string_view key) {
  return parent.empty() ? std::string(key) : fmt::format("{}.{}", parent, key);
}

std::string elementPath(std::string_view parent, std::size_t index) {
  return fmt::format("{}[{}]", parent, index);
}

std::string quoteValue(const Json& value) {
  if (value.is_object() || value.is_array()) {
    return value.is_object() ? "an object {…}" : "a list […]";
  }
  std::string text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  constexpr std::size_t kLongest = 60;
  if (text.size() > kLongest) {
    std::size_t cut = kLongest;
    while (cut > 0 && (text[cut] & 0xC0) == 0x80) --cut;
    text = text.substr(0, cut) + "…";
  }
  return (value.is_string() ? "the text " : value.is_number() ? "the number " : "") + text;
}

}  // namespace jw
