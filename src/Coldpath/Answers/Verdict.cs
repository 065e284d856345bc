namespace Coldpath.Answers;

/// <summary>Yes and no are proved; open means the question was not decided, and is to be taken as the dangerous one.</summary>
public enum Verdict
{
    Open,
    Yes,
    No,
}
