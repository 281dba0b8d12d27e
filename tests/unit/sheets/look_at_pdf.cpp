#include "look_at_pdf.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <regex>
#include <stdexcept>

namespace look {
namespace {

class Kept {
 public:
  explicit Kept(const std::string& pdf) {
    static int n = 0;
    path_ = (std::filesystem::temp_directory_path() /
             ("benchbell_sheet_" + std::to_string(::getpid()) + "_" + std::to_string(++n) + ".pdf"))
                .string();
    std::ofstream(path_, std::ios::binary) << pdf;
  }
  Kept(const Kept&) = delete;
  Kept& operator=(const Kept&) = delete;
  ~Kept() { std::filesystem::remove(path_); }
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

std::string said(const std::string& command) {
  std::FILE* pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) throw std::runtime_error(command);
  std::string out;
  std::array<char, 4096> part{};
  for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
    out.append(part.data(), n);
  if (::pclose(pipe) != 0) throw std::runtime_error(command + "\n" + out);
  return out;
}

}  // namespace

std::string words(const std::string& pdf) {
  const Kept kept(pdf);
  return said("pdftotext -layout '" + kept.path() + "' - 2>&1");
}

int pages(const std::string& pdf) {
  const Kept kept(pdf);
  const std::string info = said("pdfinfo '" + kept.path() + "' 2>&1");
  std::smatch found;
  return std::regex_search(info, found, std::regex("Pages:\\s+(\\d+)")) ? std::stoi(found[1]) : -1;
}

std::string faces(const std::string& pdf) {
  const Kept kept(pdf);
  return said("pdffonts '" + kept.path() + "' 2>&1");
}

std::vector<Word> placed_words(const std::string& pdf) {
  const Kept kept(pdf);
  const std::string xml = said("pdftotext -bbox '" + kept.path() + "' - 2>&1");
  static const std::regex page("<page width=\"([0-9.]+)\" height=\"([0-9.]+)\"");
  static const std::regex word(
      "<word xMin=\"([-0-9.]+)\" yMin=\"([-0-9.]+)\" xMax=\"([-0-9.]+)\" yMax=\"([-0-9.]+)\">"
      "(.*)</word>");
  std::vector<Word> out;
  Word now;
  std::size_t from = 0;
  while (from < xml.size()) {
    const std::size_t end = std::min(xml.find('\n', from), xml.size());
    const std::string line = xml.substr(from, end - from);
    from = end + 1;
    std::smatch found;
    if (std::regex_search(line, found, page)) {
      ++now.page;
      now.page_width = std::stod(found[1]);
      now.page_height = std::stod(found[2]);
    } else if (std::regex_search(line, found, word)) {
      now.left = std::stod(found[1]);
      now.top = std::stod(found[2]);
      now.right = std::stod(found[3]);
      now.bottom = std::stod(found[4]);
      now.text = found[5];
      out.push_back(now);
    }
  }
  return out;
}

std::vector<std::string> pictures(const std::string& pdf, int dots, const std::string& name) {
  const Kept kept(pdf);
  const std::filesystem::path folder = std::filesystem::temp_directory_path() /
                                       ("benchbell_pictures_" + std::to_string(::getpid()));
  std::filesystem::create_directories(folder);
  said("pdftoppm -png -gray -r " + std::to_string(dots) + " '" + kept.path() + "' '" +
       (folder / name).string() + "' 2>&1");
  std::vector<std::string> out;
  for (const auto& file : std::filesystem::directory_iterator(folder)) {
    if (file.path().filename().string().rfind(name + "-", 0) == 0)
      out.push_back(file.path().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace look
