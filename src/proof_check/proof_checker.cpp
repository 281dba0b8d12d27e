// proof_checker INSTANCE.sm|INSTANCE.SCH PROOF: checks the proof and says what it proves. Ends with
// 0 when it holds, 1 when it does not, 2 when a file cannot be read.
#include <exception>
#include <fstream>
#include <iostream>
#include <string>

#include "proof_check/checker.h"

int main(int count, char** words) {
  if (count != 3) {
    std::cerr << "proof_checker INSTANCE.sm|INSTANCE.SCH PROOF\n";
    return 2;
  }
  const std::string name = words[1];
  std::ifstream file(name), proof(words[2]);
  if (!file || !proof) {
    std::cerr << "cannot open " << (file ? words[2] : words[1]) << '\n';
    return 2;
  }
  try {
    const bool sm = name.size() > 3 && name.substr(name.size() - 3) == ".sm";
    const proof_check::Instance instance = sm ? proof_check::read_sm(file)
                                              : proof_check::read_sch(file);
    const proof_check::Result result = proof_check::check(instance, proof);
    if (!result.accepted) {
      std::cout << "NOT PROVED: " << result.fault << '\n';
      return 1;
    }
    std::cout << "VERIFIED: of schedules that end by " << result.horizon;
    if (result.none)
      std::cout << " there is none";
    else
      std::cout << " none is shorter than " << result.bound;
    std::cout << " (" << result.lemmas << " lemmas, " << result.derived << " derived clauses)\n";
    return 0;
  } catch (const std::exception& fault) {
    std::cerr << name << ": " << fault.what() << '\n';
    return 2;
  }
}
