#include "app/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "app/commands.h"

namespace app {
namespace {

constexpr std::uintmax_t kLargest = 32ull * 1024 * 1024;

base::Problem unwritable(const std::string& path) {
  return {"file.unwritable", path, "",
          std::string("This file cannot be written: ") + std::strerror(errno) + ".",
          "Give another name or folder, or free some space."};
}

// A file descriptor that is closed whatever happens.
class Open {
 public:
  explicit Open(int fd) : fd_(fd) {}
  Open(const Open&) = delete;
  Open& operator=(const Open&) = delete;
  ~Open() {
    if (fd_ >= 0) ::close(fd_);
  }
  int get() const { return fd_; }
  bool close() {
    const int fd = fd_;
    fd_ = -1;
    return ::close(fd) == 0;
  }

 private:
  int fd_;
};

bool write_all(int fd, const std::string& text) {
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t n = ::write(fd, text.data() + done, text.size() - done);
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return false;
    done += static_cast<std::size_t>(n);
  }
  return true;
}

}  // namespace

base::Result<std::string> read_file(const std::string& path) {
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (!std::filesystem::exists(status)) {
    return base::Problem{"file.missing", path, "", "There is no file of this name.",
                         "Check the spelling and the folder."};
  }
  if (std::filesystem::is_directory(status)) {
    return base::Problem{"file.unreadable", path, "", "This is a folder, not a file.",
                         "Name a file inside it."};
  }
  if (std::filesystem::is_regular_file(status) &&
      std::filesystem::file_size(path, error) > kLargest) {
    return base::Problem{"file.too_large", path, "", "This file is larger than 32 MB.",
                         "A dish, room or lesson is a few pages of text: name that file."};
  }
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  if (!in && text.str().empty() && in.bad()) {
    return base::Problem{"file.unreadable", path, "", "This file cannot be read.",
                         "Check that you may open it."};
  }
  if (!in.is_open()) {
    return base::Problem{"file.unreadable", path, "", "This file cannot be opened.",
                         "Check that you may open it."};
  }
  return text.str();
}

base::Result<bool> write_file(const std::string& path, const std::string& text) {
  const std::string temporary = path + ".part" + std::to_string(::getpid());
  Open out(::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
  if (out.get() < 0) return unwritable(path);
  const bool written = write_all(out.get(), text) && ::fsync(out.get()) == 0 && out.close();
  if (!written || ::rename(temporary.c_str(), path.c_str()) != 0) {
    const base::Problem problem = unwritable(path);
    ::unlink(temporary.c_str());
    return problem;
  }
  // The rename itself must reach the disk as well.
  const std::string folder = std::filesystem::path(path).parent_path().string();
  Open parent(::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (parent.get() >= 0) (void)::fsync(parent.get());
  return true;
}

kitchen::Loader file_loader() {
  return [](const std::string& path) { return read_file(path); };
}

int tell(const base::Problems& problems) {
  for (const base::Problem& p : problems) {
    std::string where = p.file;
    if (!p.where.empty()) where += (where.empty() ? "" : " ") + p.where;
    if (!where.empty()) std::fprintf(stderr, "%s\n  ", where.c_str());
    std::fprintf(stderr, "%s\n  %s\n", p.message.c_str(), p.remedy.c_str());
  }
  std::fprintf(stderr, "%zu thing%s to mend.\n", problems.size(), problems.size() == 1 ? "" : "s");
  return kBadInput;
}

}  // namespace app
