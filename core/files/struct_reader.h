#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/files/json_document.h"
#include "core/model/field_catalogue.h"

namespace jw {

/// Reads JSON objects into catalogued structs. The first error sticks: after it every call does
/// nothing, so that a caller checks once, at the end.
class StructReader {
 public:
  const std::optional<InputError>& error() const { return error_; }
  std::vector<InputError> takeNotes() { return std::move(notes_); }
  bool failed() const { return error_.has_value(); }

  void fail(std::string what, std::string where, std::string remedy);

  /// Reads the fields of T and their bands from `object`. Keys in `children` are left to the
  /// caller; other unknown ones are kept in owner.asWritten.unknown and noted.
  template <class T>
  void readFields(const Json& object, T& owner, const std::string& path,
                  std::initializer_list<std::string_view> children = {}) {
    readAll(object, structInfo<T>(), &owner, owner.asWritten, path, children);
  }

  /// The member `key` of `object` if it is there and an object; fails if it is something else.
  const Json* childObject(const Json& object, std::string_view key, const std::string& path);

  /// The same for a list, of at most `most` members.
  const Json* childList(const Json& object, std::string_view key, const std::string& path,
                        std::size_t most);

  /// Fails unless `value` is an object.
  bool needObject(const Json& value, const std::string& path);

  /// Keeps an unknown key and says so.
  void keepUnknown(AsWritten& asWritten, const std::string& key, const Json& value,
                   const std::string& path);

 private:
  void readAll(const Json& object, const StructInfo& structure, void* owner, AsWritten& asWritten,
               const std::string& path, std::initializer_list<std::string_view> children);
  void readOne(const Json& value, const FieldInfo& info, void* owner, AsWritten& asWritten,
               const std::string& path);
  void readFrom(const Json& value, const StructInfo& structure, AsWritten& asWritten,
                const std::string& path);
  std::string readText(const Json& object, std::string_view key, const std::string& path);
  void readBands(const Json& value, const StructInfo& structure, AsWritten& asWritten,
                 const std::string& path);
  void readNumber(const Json& value, const FieldInfo& info, void* owner, AsWritten& asWritten,
                  const std::string& path);

  std::optional<InputError> error_;
  std::vector<InputError> notes_;
};

}  // namespace jw
