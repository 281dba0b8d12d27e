#include "yaml_file.h"

#include <yaml.h>

#include <cstdio>
#include <memory>
#include <stdexcept>

#include "base/text.h"

namespace support {
namespace {

using nlohmann::json;

class YamlReader {
 public:
  explicit YamlReader(std::FILE* file) {
    if (yaml_parser_initialize(&parser_) == 0) throw std::runtime_error("libyaml does not start");
    yaml_parser_set_input_file(&parser_, file);
  }
  ~YamlReader() { yaml_parser_delete(&parser_); }
  YamlReader(const YamlReader&) = delete;
  YamlReader& operator=(const YamlReader&) = delete;

  json read() {
    expect(YAML_STREAM_START_EVENT);
    expect(YAML_DOCUMENT_START_EVENT);
    return value(next());
  }

 private:
  /// An event that frees itself.
  struct Free {
    void operator()(yaml_event_t* event) const {
      yaml_event_delete(event);
      delete event;
    }
  };
  using Event = std::unique_ptr<yaml_event_t, Free>;

  yaml_parser_t parser_{};

  Event next() {
    Event event(new yaml_event_t{});
    if (yaml_parser_parse(&parser_, event.get()) == 0)
      throw std::runtime_error(
          base::say("line ", parser_.problem_mark.line + 1, ": ", parser_.problem));
    return event;
  }
  void expect(yaml_event_type_t type) {
    if (next()->type != type) throw std::runtime_error("this is not one YAML document");
  }

  static json scalar(const yaml_event_t& event) {
    const auto& from = event.data.scalar;
    const std::string text(reinterpret_cast<const char*>(from.value), from.length);
    if (from.style != YAML_PLAIN_SCALAR_STYLE) return text;
    if (text == "true") return true;
    if (text == "false") return false;
    if (text == "null" || text.empty()) return nullptr;
    if (const auto number = base::number_in(text)) {
      if (text.find_first_of(".eE") == std::string::npos) return static_cast<long long>(*number);
      return *number;
    }
    return text;
  }

  json value(const Event& event) {
    switch (event->type) {
      case YAML_SCALAR_EVENT:
        return scalar(*event);
      case YAML_SEQUENCE_START_EVENT: {
        json list = json::array();
        for (Event each = next(); each->type != YAML_SEQUENCE_END_EVENT; each = next())
          list.push_back(value(each));
        return list;
      }
      case YAML_MAPPING_START_EVENT: {
        json object = json::object();
        for (Event key = next(); key->type != YAML_MAPPING_END_EVENT; key = next()) {
          const auto& name = key->data.scalar;
          if (key->type != YAML_SCALAR_EVENT) throw std::runtime_error("a key that is no text");
          const std::string text(reinterpret_cast<const char*>(name.value), name.length);
          if (object.contains(text))
            throw std::runtime_error("the key " + text + " stands there twice");
          object[text] = value(next());
        }
        return object;
      }
      default:
        throw std::runtime_error("something that JSON does not have");
    }
  }
};

}  // namespace

json yaml_file(const std::string& path) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"),
                                                             &std::fclose);
  if (!file) throw std::runtime_error("no file " + path);
  return YamlReader(file.get()).read();
}

}  // namespace support
