#pragma once

#include <string>

namespace dartwright {

/// A name that is not to outlive the process before its file is finished. The few places for names are of one
/// size; a name for which there is none is left out, and a signal then leaves it behind.
class UnfinishedFile {
  public:
    explicit UnfinishedFile(const std::string& path);
    UnfinishedFile(const UnfinishedFile&) = delete;
    UnfinishedFile& operator=(const UnfinishedFile&) = delete;
    ~UnfinishedFile();

  private:
    int place_ = -1;
};

}  // namespace dartwright
