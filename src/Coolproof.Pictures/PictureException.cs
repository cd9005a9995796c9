namespace Coolproof.Pictures;

/// <summary>A picture that could not be drawn or kept: the message says what happened, what is safe and what to do.</summary>
public sealed class PictureException : Exception
{
    /// <summary>A failure told to the person.</summary>
    /// <param name="message">What happened, what is safe, what to do.</param>
    /// <param name="cause">What the machine said.</param>
    public PictureException(string message, Exception? cause = null) : base(message, cause)
    {
    }
}
